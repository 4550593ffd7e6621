/** Load combinations of ASCE 7-16 chapter 2 and EN 1990. */
import { asceReturnFactor } from './wind/gust.ts';

/** Multipliers of the actions; 0 means the action is left out. */
export interface Factors {
  readonly dead: number;
  /** Hung crop: a variable load that can be away, so it never helps against lift. */
  readonly crop: number;
  readonly snow: number;
  /** Ponded water. */
  readonly rain: number;
  readonly wind: number;
  /** Maintenance point load or a person's push. */
  readonly person: number;
  /** Locked-in bending and pretension. */
  readonly prestress: number;
}

export interface Combination {
  readonly id: string;
  readonly title: string;
  readonly factors: Factors;
  /** 'strength' for members and joints, 'stability' for lift and overturning, 'service' for deflection. */
  readonly use: 'strength' | 'stability' | 'service';
  readonly source: string;
}

export type Basis = 'asce7-asd' | 'asce7-strength' | 'eurocode';

const NONE: Factors = {
  dead: 0,
  crop: 0,
  snow: 0,
  rain: 0,
  wind: 0,
  person: 0,
  prestress: 1,
};

function combination(
  id: string,
  title: string,
  use: Combination['use'],
  source: string,
  factors: Partial<Factors>,
): Combination {
  return { id, title, use, source, factors: { ...NONE, ...factors } };
}

/**
 * In-use combinations of the ASCE 7-16 commentary to appendix C: D + L, D + 0.5 S, D + 0.5 L + W_a with
 * the ten-year gust, whose pressure is the square of the gust ratio to the strength-level gust.
 */
function inUse(prefix: string, lowHazard: boolean): Combination[] {
  const source = 'asce7-16:cc';
  const gust = (asceReturnFactor(10) / asceReturnFactor(lowHazard ? 300 : 700)) ** 2;
  return [
    combination(`${prefix}-s1`, 'in use: D + crop', 'service', source, {
      dead: 1,
      crop: 1,
    }),
    combination(`${prefix}-s2`, 'in use: D + crop + 0.5 S', 'service', source, {
      dead: 1,
      crop: 1,
      snow: 0.5,
    }),
    combination(`${prefix}-s3`, 'in use: D + 0.5 crop + ten-year gust', 'service', source, {
      dead: 1,
      crop: 0.5,
      wind: gust,
    }),
  ];
}

/** ASCE 7-16 2.4.1; crop is a live load, a person is a roof live load. */
function allowable(lowHazard: boolean): Combination[] {
  const source = 'asce7-16:2.4.1';
  const make = (id: string, title: string, use: Combination['use'], factors: Partial<Factors>): Combination =>
    combination(`asd-${id}`, title, use, source, factors);
  return [
    make('1', 'D', 'strength', { dead: 1 }),
    make('2', 'D + L', 'strength', { dead: 1, crop: 1 }),
    make('3-person', 'D + Lr', 'strength', { dead: 1, person: 1 }),
    make('3-snow', 'D + S', 'strength', { dead: 1, snow: 1 }),
    make('3-rain', 'D + R', 'strength', { dead: 1, rain: 1 }),
    make('4-person', 'D + 0.75 L + 0.75 Lr', 'strength', {
      dead: 1,
      crop: 0.75,
      person: 0.75,
    }),
    make('4-snow', 'D + 0.75 L + 0.75 S', 'strength', {
      dead: 1,
      crop: 0.75,
      snow: 0.75,
    }),
    make('4-rain', 'D + 0.75 L + 0.75 R', 'strength', {
      dead: 1,
      crop: 0.75,
      rain: 0.75,
    }),
    make('5', 'D + 0.6 W', 'strength', { dead: 1, wind: 0.6 }),
    make('6-snow', 'D + 0.75 L + 0.75 (0.6 W) + 0.75 S', 'strength', {
      dead: 1,
      crop: 0.75,
      wind: 0.45,
      snow: 0.75,
    }),
    make('6-rain', 'D + 0.75 L + 0.75 (0.6 W) + 0.75 R', 'strength', {
      dead: 1,
      crop: 0.75,
      wind: 0.45,
      rain: 0.75,
    }),
    make('7', '0.6 D + 0.6 W', 'stability', { dead: 0.6, wind: 0.6 }),
    ...inUse('asd', lowHazard),
  ];
}

/** ASCE 7-16 2.3.1. */
function strength(lowHazard: boolean): Combination[] {
  const source = 'asce7-16:2.3.1';
  const make = (id: string, title: string, use: Combination['use'], factors: Partial<Factors>): Combination =>
    combination(`lrfd-${id}`, title, use, source, factors);
  return [
    make('1', '1.4 D', 'strength', { dead: 1.4 }),
    make('2-person', '1.2 D + 1.6 L + 0.5 Lr', 'strength', {
      dead: 1.2,
      crop: 1.6,
      person: 0.5,
    }),
    make('2-snow', '1.2 D + 1.6 L + 0.5 S', 'strength', {
      dead: 1.2,
      crop: 1.6,
      snow: 0.5,
    }),
    make('2-rain', '1.2 D + 1.6 L + 0.5 R', 'strength', {
      dead: 1.2,
      crop: 1.6,
      rain: 0.5,
    }),
    make('3-person', '1.2 D + 1.6 Lr + L', 'strength', {
      dead: 1.2,
      person: 1.6,
      crop: 1,
    }),
    make('3-snow', '1.2 D + 1.6 S + L', 'strength', {
      dead: 1.2,
      snow: 1.6,
      crop: 1,
    }),
    make('3-rain', '1.2 D + 1.6 R + L', 'strength', {
      dead: 1.2,
      rain: 1.6,
      crop: 1,
    }),
    make('3-snow-wind', '1.2 D + 1.6 S + 0.5 W', 'strength', {
      dead: 1.2,
      snow: 1.6,
      wind: 0.5,
    }),
    make('3-rain-wind', '1.2 D + 1.6 R + 0.5 W', 'strength', {
      dead: 1.2,
      rain: 1.6,
      wind: 0.5,
    }),
    make('4-snow', '1.2 D + W + L + 0.5 S', 'strength', {
      dead: 1.2,
      wind: 1,
      crop: 1,
      snow: 0.5,
    }),
    make('4-rain', '1.2 D + W + L + 0.5 R', 'strength', {
      dead: 1.2,
      wind: 1,
      crop: 1,
      rain: 0.5,
    }),
    make('5', '0.9 D + W', 'stability', { dead: 0.9, wind: 1 }),
    ...inUse('lrfd', lowHazard),
  ];
}

/**
 * EN 1990 eq. 6.10 with table A1.2: STR 1.35 G + 1.5 Q, EQU 0.9 G + 1.5 Q. ψ0: wind 0.6, snow 0.5
 * (below 1000 m), crop 0.7; ponded water is taken as a variable action with ψ0 = 0.7 (EN names none).
 * In the low-hazard class RC1 unfavourable factors are multiplied by K_FI = 0.9 (table B3).
 */
function eurocode(lowHazard: boolean): Combination[] {
  const k = lowHazard ? 0.9 : 1;
  const g = 1.35 * k;
  const q = 1.5 * k;
  const source = 'en1990:6.10';
  const make = (id: string, title: string, use: Combination['use'], factors: Partial<Factors>): Combination =>
    combination(`en-${id}`, title, use, source, factors);
  const service = (id: string, title: string, factors: Partial<Factors>): Combination =>
    combination(`en-${id}`, title, 'service', 'en1990:6.14', factors);
  return [
    make('g', 'STR: permanent and crop', 'strength', { dead: g, crop: q }),
    make('snow', 'STR: snow leads', 'strength', {
      dead: g,
      snow: q,
      crop: 0.7 * q,
      wind: 0.6 * q,
    }),
    make('rain', 'STR: ponded water leads', 'strength', {
      dead: g,
      rain: q,
      crop: 0.7 * q,
      wind: 0.6 * q,
    }),
    make('wind', 'STR: wind leads', 'strength', {
      dead: g,
      wind: q,
      crop: 0.7 * q,
      snow: 0.5 * q,
    }),
    make('wind-rain', 'STR: wind leads, with ponded water', 'strength', {
      dead: g,
      wind: q,
      crop: 0.7 * q,
      rain: 0.7 * q,
    }),
    make('person', 'STR: a person leads', 'strength', {
      dead: g,
      person: q,
      crop: 0.7 * q,
    }),
    make('str-up', 'STR: wind lifts, weight helps', 'strength', {
      dead: 1,
      wind: q,
    }),
    make('equ', 'EQU: wind lifts or overturns', 'stability', {
      dead: 0.9,
      wind: q,
    }),
    service('s1', 'in use: weight and crop', { dead: 1, crop: 1 }),
    service('s2', 'in use: snow leads', { dead: 1, snow: 1, crop: 0.7 }),
    service('s3', 'in use: wind leads', { dead: 1, wind: 1, crop: 0.7 }),
  ];
}

/**
 * All combinations of a basis. The locked-in bending of an elastic bow and pretension are permanent and
 * enter with 1: they are stresses of the geometry, not of a load that can grow.
 * @param lowHazard EN: reliability class RC1. ASCE: only in the in-use gust, since the strength-level gust
 *   already has the return period of its risk category
 */
export function combinations(basis: Basis, lowHazard: boolean): readonly Combination[] {
  if (basis === 'eurocode') return eurocode(lowHazard);
  return basis === 'asce7-asd' ? allowable(lowHazard) : strength(lowHazard);
}
