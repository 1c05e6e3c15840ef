import type { CoreShape } from '../../correlations/core-geometry.ts';

/** `reference * (flow / atFlow) ^ exponent`; on the coolant side never below `floor * reference`. */
interface ConductancePower {
  readonly kind: 'power';
  /** W/K at `atFlow` */
  readonly reference: number;
  /** kg/s */
  readonly atFlow: number;
  readonly exponent: number;
  /** share of `reference` that remains without flow, 0 to 1; 0 on the air side */
  readonly floor: number;
}

/** A curve through points, straight between them in logarithms, its end slopes held beyond; never below `floor`. */
interface ConductanceTable {
  readonly kind: 'table';
  /** kg/s, ascending, at least two */
  readonly flow: readonly number[];
  /** W/K */
  readonly value: readonly number[];
  /** W/K that remain without flow */
  readonly floor: number;
}

export type ConductanceLaw = ConductancePower | ConductanceTable;

/** Air drop of the core; Pa, kg/s, kg/m3. */
export type AirDropLaw =
  /** drop (m/atFlow)^exponent (atDensity/rho) */
  | {
      readonly kind: 'power';
      readonly drop: number;
      readonly atFlow: number;
      readonly atDensity: number;
      readonly exponent: number;
    }
  /** ( curve(m) + acceleration m^2 (T_out - T_in)/T_mean )/rho, the curve as in a table of conductance */
  | {
      readonly kind: 'table';
      /** kg/s, ascending, at least two */
      readonly flow: readonly number[];
      /** Pa kg/m3 at constant density; all 0 in a core without drop */
      readonly dropTimesDensity: readonly number[];
      /** 1/m4: air that cools slows down and regains pressure */
      readonly acceleration: number;
    };

/** Cores and exchangers by a factor: the coolant's drop goes with this power of the flow; own choice. */
export const COOLANT_DROP_EXPONENT = 1.8;

/** Coolant drop of one exchanger: factor Q^1.8, Pa at 1 m3/s; or a curve as in a table of conductance, m3/s and Pa. */
export type CoolantDropLaw =
  | { readonly kind: 'power'; readonly factor: number }
  | { readonly kind: 'table'; readonly flow: readonly number[]; readonly drop: readonly number[] };

/** A core described by its measures, and all that its laws follow from. SI. */
export interface CoreGeometryConfig {
  readonly shape: CoreShape;
  /** ports at the same end of the stack (U) or at opposite ends (Z) */
  readonly arrangement: 'U' | 'Z';
  /** groups of neighbouring layers that get their own share of the coolant */
  readonly sheets: number;
  /** what the scenario can reach, lowest and highest: kg/s of charge air, m3/s of coolant */
  readonly airFlows: readonly [number, number];
  readonly coolantFlows: readonly [number, number];
  /** where properties are taken, K */
  readonly airTemperature: number;
  readonly coolantTemperature: number;
  readonly air: { readonly heatCapacity: number; readonly viscosity: number; readonly conductivity: number };
  readonly coolant: {
    readonly density: number;
    readonly heatCapacity: number;
    readonly viscosity: number;
    readonly conductivity: number;
  };
  /** what is typed over what the geometry gives; 1 where nothing is typed */
  readonly factors: Readonly<Record<GeometryFactor, number>>;
  /** Pa at 1 m3/s with flow^1.8, typed: stands in place of the three drops of the geometry */
  readonly coolantDropFactor?: number;
  /** share of the face that the opening leaves to the air */
  readonly exposedShare: number;
}

/** What a measured point may scale. */
export type GeometryFactor =
  | 'airConductance'
  | 'coolantConductance'
  | 'airDrop'
  | 'metalHeatCapacity'
  | 'coolantVolume';

/** What the scenario says about one cross-flow exchanger (core or front exchanger), metal and both sides. */
export interface CellBlockConfig {
  readonly airConductance: ConductanceLaw;
  readonly coolantConductance: ConductanceLaw;
  /** J/K of the whole metal */
  readonly metalHeatCapacity: number;
  /** m3 */
  readonly coolantVolume: number;
  readonly coolantDrop: CoolantDropLaw;
  readonly cellsAlongAir: number;
  readonly cellsAlongCoolant: number;
}

/** Passes, sheets and cores; shares of sheets add up to 1 each. */
export interface CoreLayout {
  readonly passes: 1 | 2;
  /** two passes: whether the coolant enters where the air leaves */
  readonly isCounter: boolean;
  /** coolant that mixes where it turns round, m3 */
  readonly turnVolume: number;
  /** groups of layers that get like coolant: share of the layers, share of the coolant */
  readonly sheets: readonly { readonly layers: number; readonly flow: number }[];
  /** cores beside each other in the air: one after the other in the coolant, or beside each other there too */
  readonly inSeries: 1 | 2;
  readonly sideBySide: 1 | 2;
  /** share of the layers that hold coolant and no air, above 0 to 1 */
  readonly wetShare: number;
  /** air velocity along the coolant over its mean, a value for each column of cells; absent: even */
  readonly airVelocity?: readonly number[];
}

export interface CoreConfig extends CellBlockConfig {
  readonly airDrop: AirDropLaw;
  /** absent: the core is given by test points */
  readonly geometry?: CoreGeometryConfig;
  /** where a law of the geometry goes beyond what it was published for, or is scaled to a measured point; in words */
  readonly marks: readonly string[];
  /** W/K, metal to bay air, spread evenly */
  readonly toBay: number;
  /** share of the air that passes the core without touching it, 0 to below 1 */
  readonly leakPast: number;
  /** narrowest air passage between compressor outlet and plenum, m2; absent: its Mach number is not looked at */
  readonly airPortArea?: number;
  readonly layout: CoreLayout;
  /** whether vapour condenses on metal below the charge's dew point */
  readonly condensation: boolean;
}

export interface ExchangerConfig extends CellBlockConfig {
  /** m2 */
  readonly faceArea: number;
}
