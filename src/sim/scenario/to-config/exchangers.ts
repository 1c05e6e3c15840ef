import { velocityWeights } from '../../correlations/distribution-weights.ts';
import { toSi } from '../../units.ts';
import type { CellBlockConfig, CoreConfig, CoreLayout, ExchangerConfig } from '../config/exchangers.ts';
import type { Config } from '../config.ts';
import { ofAllCores, withBlockedFace } from '../laws.ts';
import type { ExchangerValues, Values } from '../shape.ts';

/**
 * Where the opening leaves only a share of the face to the air, the core acts as one as much narrower: air faster by
 * the inverse (conductance share^(1 - n), drop share^-m), and only that much of the coolant's way exchanges.
 */
export function coreOf({ core }: Values): CoreConfig {
  const block = cellBlock(core);
  const { airConductance, coolantConductance } = block;
  const share = core.exposedShare;
  const layout = layoutOf(core);
  const one = {
    ...block,
    airConductance: { ...airConductance, reference: airConductance.reference * share ** (1 - airConductance.exponent) },
    coolantConductance: { ...coolantConductance, reference: coolantConductance.reference * share },
    airDrop: {
      kind: 'power' as const,
      drop: toSi(core.airDrop, 'kPa') * share ** -core.airDropExponent,
      atFlow: core.airDropAtFlow,
      atDensity: core.airDropAtDensity,
      exponent: core.airDropExponent,
    },
  };
  return {
    ...ofAllCores(one, layout),
    marks: [],
    toBay: core.count * core.toBay,
    leakPast: core.leakPast,
    ...(core.airPortArea !== undefined && { airPortArea: toSi(core.airPortArea, 'cm2') }),
    layout,
    condensation: core.condensation === 'on',
  };
}

function layoutOf(core: Values['core']): CoreLayout {
  const { passes, passArrangement, turnVolume, count, coolantOrder, airVelocity, cellsAlongCoolant } = core;
  const isPair = count === 2;
  const points = airVelocity?.map(({ place, speed }) => [place, speed] as const);
  return {
    passes: passes === 2 ? 2 : 1,
    isCounter: passArrangement === 'cross-counter',
    turnVolume: count * toSi(turnVolume, 'L'),
    sheets: [{ layers: 1, flow: 1 }],
    inSeries: isPair && coolantOrder === 'series' ? 2 : 1,
    sideBySide: isPair && coolantOrder === 'parallel' ? 2 : 1,
    wetShare: 1,
    ...(points && { airVelocity: velocityWeights(points, cellsAlongCoolant) }),
  };
}

export function exchangersOf({ exchanger, secondExchanger }: Values): Pick<Config, 'exchanger' | 'secondExchanger'> {
  return {
    ...(exchanger && { exchanger: exchangerOf(exchanger) }),
    ...(secondExchanger && { secondExchanger: exchangerOf(secondExchanger) }),
  };
}

function exchangerOf(exchanger: ExchangerValues): ExchangerConfig {
  return withBlockedFace({ ...cellBlock(exchanger), faceArea: exchanger.faceArea }, exchanger.blockedShare);
}

/** The keys that core and exchanger share. */
function cellBlock(part: Values['core'] | ExchangerValues) {
  return {
    airConductance: {
      kind: 'power',
      reference: part.airConductance,
      atFlow: part.airConductanceAtFlow,
      exponent: part.airConductanceExponent,
      floor: 0,
    },
    coolantConductance: {
      kind: 'power',
      reference: part.coolantConductance,
      atFlow: part.coolantConductanceAtFlow,
      exponent: part.coolantConductanceExponent,
      floor: part.coolantConductanceFloor,
    },
    metalHeatCapacity: toSi(part.metalHeatCapacity, 'kJ/K'),
    coolantVolume: toSi(part.coolantVolume, 'L'),
    coolantDrop: { kind: 'power', factor: toSi(part.coolantDropFactor, 'Pa/(L/min)^1.8') },
    cellsAlongAir: part.cellsAlongAir,
    cellsAlongCoolant: part.cellsAlongCoolant,
  } as const satisfies CellBlockConfig;
}
