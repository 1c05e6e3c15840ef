import motorwayWagon from '../../../scenarios/motorway-wagon.json?raw';
import quarterMileSaloon from '../../../scenarios/quarter-mile-saloon.json?raw';
import ridgeRoadster from '../../../scenarios/ridge-roadster.json?raw';
import rollingRoadEstate from '../../../scenarios/rolling-road-estate.json?raw';
import sessionCoupe from '../../../scenarios/session-coupe.json?raw';

/** A car that ships with the page; it goes through the same reader as any file. */
export interface DemoScenario {
  readonly name: string;
  readonly text: string;
}

/** The first is what a first visit opens. */
export const DEMO_SCENARIOS: readonly DemoScenario[] = [
  rollingRoadEstate,
  ridgeRoadster,
  motorwayWagon,
  sessionCoupe,
  quarterMileSaloon,
].map((text) => ({
  name: String(JSON.parse(text).name),
  text,
}));
