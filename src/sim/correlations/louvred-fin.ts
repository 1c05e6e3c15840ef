import { requirePositive, requireWithin } from '../errors.ts';
import { type Limit, markOf, type Ranged } from './range-mark.ts';

/** A corrugated louvred fin between flat tubes; m and degrees. */
export interface LouvredFin {
  /** one fin to the next, spacing and thickness together */
  readonly finPitch: number;
  /** across the air from tube to tube */
  readonly finHeight: number;
  readonly finThickness: number;
  /** along the air */
  readonly depth: number;
  /** along the air */
  readonly louvrePitch: number;
  /** across the air, shorter than finHeight */
  readonly louvreLength: number;
  /** degrees */
  readonly louvreAngle: number;
  /** facing the air */
  readonly tubeHeight: number;
}

/**
 * Greatest depth of the data, m. Past it the coefficients stay those of this depth: own choice, the data have no more.
 */
const DEEPEST = 0.0574;

/** The limits of the 91 samples, lengths in mm. */
function limitsOf(Re: number, fin: LouvredFin): readonly Limit[] {
  requirePositive('Reynolds number', Re);
  for (const [name, size] of Object.entries(fin)) requirePositive(`${name} of a louvred fin`, size);
  requireWithin('louvre angle in degrees', fin.louvreAngle, 0, 90);
  requireWithin('louvre length in m', fin.louvreLength, 0, fin.finHeight);
  return [
    ['louvre Reynolds number [-]', Re, 100, 3000],
    ['fin pitch [mm]', 1e3 * fin.finPitch, 0.51, 3.33],
    ['louvre pitch [mm]', 1e3 * fin.louvrePitch, 0.5, 3],
    ['fin height [mm]', 1e3 * fin.finHeight, 2.84, 25],
    ['core depth [mm]', 1e3 * fin.depth, 15.6, 1e3 * DEEPEST],
    ['louvre length [mm]', 1e3 * fin.louvreLength, 2.13, 18.5],
    ['tube pitch [mm]', 1e3 * (fin.finHeight + fin.tubeHeight), 7.51, 25],
    ['fin thickness [mm]', 1e3 * fin.finThickness, 0.0254, 0.16],
    ['louvre angle [degrees]', fin.louvreAngle, 8.4, 35],
  ];
}

/**
 * Thinnest fin with a friction, as a share of its pitch: at a hundredth ln(sqrt(t/Fp) + 0.9) of the published formula
 * is 0 and its power without value
 */
export const THINNEST_SHARE = 0.0101;

/**
 * Colburn factor of a corrugated louvred fin on flat tubes, after Chang and Wang.
 *
 *     j = Re^-0.49 (th/90)^0.27 (Fp/Lp)^-0.14 (Fl/Lp)^-0.29 (Td/Lp)^-0.23 (Ll/Lp)^0.68 (Tp/Lp)^-0.28 (t/Lp)^-0.05
 *     Re = G Lp/mu on the louvre pitch, G in the narrowest free area
 *
 * Range: 100 < Re < 3000, fin pitch 0.51 to 3.33, louvre pitch 0.5 to 3, fin height 2.84 to 25, depth 15.6 to 57.4,
 * louvre length 2.13 to 18.5, tube pitch 7.51 to 25, thickness 0.0254 to 0.16 mm, angle 8.4 to 35 degrees (91 samples),
 * 89 % of the data within 15 %. A deeper core gets the value of 57.4 mm, marked: expect 20 % there.
 *
 * @param Re - Reynolds number on the louvre pitch [-]
 * @param fin - sizes of fin and louvres [m, degrees]
 * @returns h/(G cp) Pr^(2/3), with its mark [-]
 * @throws {OutOfRangeError} when Re or a size is not above 0, or the louvre is longer than the fin is high
 *
 * @example
 * colburnLouvred(300, {
 *   finPitch: 0.0014, finHeight: 0.008, finThickness: 0.0001, depth: 0.026,
 *   louvrePitch: 0.0012, louvreLength: 0.0068, louvreAngle: 27, tubeHeight: 0.002
 * }).value // 0.024996988
 *
 * [1] Y.-J. Chang, C.-C. Wang, A generalized heat transfer correlation for louver fin geometry, Int. J. Heat Mass
 *     Transfer 40, 1997, 533-544.
 */
export function colburnLouvred(Re: number, fin: LouvredFin): Ranged {
  const range = markOf(limitsOf(Re, fin));
  const Lp = fin.louvrePitch;
  const value =
    Re ** -0.49 *
    (fin.louvreAngle / 90) ** 0.27 *
    (fin.finPitch / Lp) ** -0.14 *
    (fin.finHeight / Lp) ** -0.29 *
    (Math.min(fin.depth, DEEPEST) / Lp) ** -0.23 *
    (fin.louvreLength / Lp) ** 0.68 *
    ((fin.finHeight + fin.tubeHeight) / Lp) ** -0.28 *
    (fin.finThickness / Lp) ** -0.05;
  return { value, range };
}

/** Where the two branches are led into each other, [2] of frictionLouvred. */
const JOINT_FROM = 130;
const JOINT_TO = 230;
/** Below this the low branch nears its pole at Re 2; f goes on as 1/Re, as in any creeping flow. Own choice. */
const LOWEST = 30;

/**
 * Fanning friction factor of a corrugated louvred fin on flat tubes, after Chang, Hsu, Lin and Wang.
 *
 *     f = f1 f2 f3; up to Re 130:
 *       f1 = 14.39 Re^(-0.805 Fp/Fl) (ln(1 + Fp/Lp))^3.04
 *       f2 = (ln((t/Fp)^0.48 + 0.9))^-1.435 (Dh/Lp)^-3.01 (ln(0.5 Re))^-3.01
 *       f3 = (Fp/Ll)^-0.308 (Td/Ll)^-0.308 exp(-0.1167 Tp/Dm) th^0.35
 *     from Re 230:
 *       f1 = 4.97 Re^(0.6049 - 1.064/th^0.2) (ln((t/Fp)^0.5 + 0.9))^-0.527
 *       f2 = ((Dh/Lp) ln(0.3 Re))^-2.966 (Fp/Ll)^(-0.7931 Tp/(Tp - Dm))
 *       f3 = (Tp/Dm)^-0.0446 (ln(1.2 + (Lp/Fp)^1.4))^-3.553 th^-0.477
 *     between: f^2 = ((1 + w) f(130)^2 + (1 - w) f(230)^2)/2,  w = 3.6 - 0.02 Re
 *
 * th in degrees, Dm the height of the tube, Dh of the channel between two fins.
 *
 * Range: as colburnLouvred; 83 % of the data within 15 %. The published branches meet at 150 with a jump (16 % in one
 * sample), which the authors amended as above. A deeper core gets the value of 57.4 mm, marked; below Re 30 f is
 * carried on as 1/Re, marked.
 *
 * @param Re - Reynolds number on the louvre pitch [-]
 * @param fin - sizes of fin and louvres [m, degrees]
 * @returns Fanning friction factor, with its mark [-]
 * @throws {OutOfRangeError} as colburnLouvred, and when the fin is thinner than a hundredth of its pitch, where the
 * formula has no value
 *
 * @example
 * frictionLouvred(300, {
 *   finPitch: 0.0014, finHeight: 0.008, finThickness: 0.0001, depth: 0.026,
 *   louvrePitch: 0.0012, louvreLength: 0.0068, louvreAngle: 27, tubeHeight: 0.002
 * }).value // 0.1114371549
 *
 * [1] Y.-J. Chang, K.-C. Hsu, Y.-T. Lin, C.-C. Wang, A generalized friction correlation for louver fin geometry, Int.
 *     J. Heat Mass Transfer 43, 2000, 2237-2243.
 * [2] Y.-J. Chang, W.-J. Chang, M.-C. Li, C.-C. Wang, An amendment of the generalized friction correlation for louver
 *     fin geometry, Int. J. Heat Mass Transfer 49, 2006, 4250-4253.
 */
export function frictionLouvred(Re: number, fin: LouvredFin): Ranged {
  const range = markOf(limitsOf(Re, fin));
  const thinnest = THINNEST_SHARE * fin.finPitch;
  requireWithin('thickness of a louvred fin in m', fin.finThickness, thinnest, fin.finPitch);
  return { value: frictionAt(Re, fin), range };
}

function frictionAt(Re: number, fin: LouvredFin): number {
  if (Re < LOWEST) return (lowBranch(LOWEST, fin) * LOWEST) / Re;
  if (Re <= JOINT_FROM) return lowBranch(Re, fin);
  if (Re >= JOINT_TO) return highBranch(Re, fin);
  const w = 3.6 - 0.02 * Re;
  return Math.sqrt(((1 + w) * lowBranch(JOINT_FROM, fin) ** 2 + (1 - w) * highBranch(JOINT_TO, fin) ** 2) / 2);
}

function channelDiameter(fin: LouvredFin): number {
  const s = fin.finPitch - fin.finThickness;
  const h = fin.finHeight - fin.finThickness;
  return (2 * s * h) / (s + h);
}

function lowBranch(Re: number, fin: LouvredFin): number {
  const { finPitch: Fp, louvrePitch: Lp, louvreLength: Ll } = fin;
  const Tp = fin.finHeight + fin.tubeHeight;
  const f1 = 14.39 * Re ** ((-0.805 * Fp) / fin.finHeight) * Math.log(1 + Fp / Lp) ** 3.04;
  const f2 =
    Math.log((fin.finThickness / Fp) ** 0.48 + 0.9) ** -1.435 *
    (channelDiameter(fin) / Lp) ** -3.01 *
    Math.log(0.5 * Re) ** -3.01;
  const f3 =
    (Fp / Ll) ** -0.308 *
    (Math.min(fin.depth, DEEPEST) / Ll) ** -0.308 *
    Math.exp((-0.1167 * Tp) / fin.tubeHeight) *
    fin.louvreAngle ** 0.35;
  return f1 * f2 * f3;
}

function highBranch(Re: number, fin: LouvredFin): number {
  const { finPitch: Fp, louvrePitch: Lp, louvreAngle: angle } = fin;
  const Tp = fin.finHeight + fin.tubeHeight;
  const f1 = 4.97 * Re ** (0.6049 - 1.064 / angle ** 0.2) * Math.log(Math.sqrt(fin.finThickness / Fp) + 0.9) ** -0.527;
  const f2 =
    ((channelDiameter(fin) / Lp) * Math.log(0.3 * Re)) ** -2.966 *
    (Fp / fin.louvreLength) ** ((-0.7931 * Tp) / fin.finHeight);
  const f3 = (Tp / fin.tubeHeight) ** -0.0446 * Math.log(1.2 + (Lp / Fp) ** 1.4) ** -3.553 * angle ** -0.477;
  return f1 * f2 * f3;
}
