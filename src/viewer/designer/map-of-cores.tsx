import { useSignal } from '@preact/signals';
import type { CoreMap, CoreMapPoint, Issue } from '../../sim/index.ts';
import type { FormProps } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { length, onScreen } from '../format.ts';
import { StudyState } from '../study-state.tsx';
import { MAP_SHOWS, type MapShow, optimumSentences, pickChanges, wide } from './core-map.ts';
import { MapGrid } from './map-grid.tsx';
import { finsPerInch } from './shown.ts';
import { isCalibrated, useCoreMap } from './use-core-map.ts';

/** Cores of other fin density, depth and width in the same car, each to be had with one click. */
export function MapOfCores(props: FormProps) {
  return <Fold title="Map of fin density, depth and width">{() => <Body {...props} />}</Fold>;
}

function Body(props: FormProps) {
  const study = useCoreMap(props);
  const { found, isLate, state, recentre } = study;
  const show = useSignal<MapShow>('charge peak');
  const extent = state.kind === 'working' && state.of > 0 ? `${state.done} of ${state.of} cores` : undefined;
  return (
    <div class="core-map">
      <StudyState study={study} what="the map" extent={extent} />
      {found !== undefined && (
        <div class={isLate ? 'late' : undefined}>
          <Found {...props} map={found.result} show={show.value} onShow={(next) => (show.value = next)} />
        </div>
      )}
      {recentre && state.kind === 'done' && (
        <button type="button" onClick={recentre}>
          Depths round this core
        </button>
      )}
    </div>
  );
}

interface FoundProps extends FormProps {
  readonly map: CoreMap | undefined;
  readonly show: MapShow;
  readonly onShow: (show: MapShow) => void;
}

function Found({ map, show, onShow, ...props }: FoundProps) {
  const { session, display, car } = props;
  const refusal = useSignal<readonly Issue[]>([]);
  const width = useSignal(1);
  const units = display.units.value;
  if (map === undefined || map.points.length === 0)
    return <p class="small">No map: no pull of this run comes to its end.</p>;
  const widths = [...new Set(map.points.map((point) => point.width))].toSorted((a, b) => a - b);
  const pick = (point: CoreMapPoint) => {
    const label = `${finsPerInch(point.finPitch)} fins per inch, ${length(point.depth, units)} deep${wide(point.width)}`;
    const changes = pickChanges(point, car.config.core.geometry?.shape.length ?? Number.NaN);
    const issues = session.change(changes, label);
    // The map is drawn again round the width that was taken.
    width.value = 1;
    refusal.value = issues.filter(({ severity }) => severity === 'error');
    // The refusal is said here; no box was typed into.
    if (refusal.value.length > 0) session.dropDraft(Object.keys(changes)[0]);
  };
  return (
    <>
      <div class="field">
        <span class="name">
          <label for="core-map-show">Cells show</label>
        </span>
        <select
          id="core-map-show"
          value={show}
          onChange={({ currentTarget }) => onShow(currentTarget.value as MapShow)}
        >
          {MAP_SHOWS.map((each) => (
            <option key={each} value={each}>
              {each}
            </option>
          ))}
        </select>
      </div>
      <div class="field">
        <span class="name">
          <label for="core-map-width">Cells at width</label>
        </span>
        <select
          id="core-map-width"
          value={width.value}
          onChange={({ currentTarget }) => (width.value = Number(currentTarget.value))}
        >
          {widths.map((each) => (
            <option key={each} value={each}>
              {each === 1 ? 'as it is' : `×${each}`}
            </option>
          ))}
        </select>
      </div>
      <MapGrid map={map} show={show} width={width.value} car={car} units={units} onPick={pick} />
      {refusal.value.map(({ path, message }) => (
        <p key={path} class="message" role="status">
          {onScreen(message)}
        </p>
      ))}
      <ul class="optima">
        {optimumSentences(map, units).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {isCalibrated(car) && (
        <p class="small">
          Figures are typed over the measures of this core. In the map they grow with the core; in a core taken from it
          they stay as typed.
        </p>
      )}
    </>
  );
}
