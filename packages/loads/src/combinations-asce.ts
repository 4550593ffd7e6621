/** Load combinations of ASCE 7-16 chapter 2. */
import { type Combination, combination, type Factors, withoutWhatRelieves } from './combination.ts';
import { asceReturnFactor } from './wind/gust.ts';

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
export function allowable(lowHazard: boolean): Combination[] {
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
    ...withoutWhatRelieves(
      make('6-snow', 'D + 0.75 L + 0.75 (0.6 W) + 0.75 S', 'strength', {
        dead: 1,
        crop: 0.75,
        wind: 0.45,
        snow: 0.75,
      }),
      ['crop'],
    ),
    ...withoutWhatRelieves(
      make('6-rain', 'D + 0.75 L + 0.75 (0.6 W) + 0.75 R', 'strength', {
        dead: 1,
        crop: 0.75,
        wind: 0.45,
        rain: 0.75,
      }),
      ['crop'],
    ),
    make('6', 'D + 0.75 L + 0.75 (0.6 W)', 'strength', { dead: 1, crop: 0.75, wind: 0.45 }),
    make('7', '0.6 D + 0.6 W', 'stability', { dead: 0.6, wind: 0.6 }),
    ...inUse('asd', lowHazard),
  ];
}

/** ASCE 7-16 2.3.1. */
export function strength(lowHazard: boolean): Combination[] {
  const source = 'asce7-16:2.3.1';
  const make = (id: string, title: string, use: Combination['use'], factors: Partial<Factors>): Combination =>
    combination(`lrfd-${id}`, title, use, source, factors);
  return [
    make('1', '1.4 D', 'strength', { dead: 1.4 }),
    ...withoutWhatRelieves(
      make('2-person', '1.2 D + 1.6 L + 0.5 Lr', 'strength', {
        dead: 1.2,
        crop: 1.6,
        person: 0.5,
      }),
      ['person'],
    ),
    ...withoutWhatRelieves(
      make('2-snow', '1.2 D + 1.6 L + 0.5 S', 'strength', {
        dead: 1.2,
        crop: 1.6,
        snow: 0.5,
      }),
      ['snow'],
    ),
    ...withoutWhatRelieves(
      make('2-rain', '1.2 D + 1.6 L + 0.5 R', 'strength', {
        dead: 1.2,
        crop: 1.6,
        rain: 0.5,
      }),
      ['rain'],
    ),
    ...withoutWhatRelieves(
      make('3-person', '1.2 D + 1.6 Lr + L', 'strength', {
        dead: 1.2,
        person: 1.6,
        crop: 1,
      }),
      ['crop'],
    ),
    ...withoutWhatRelieves(
      make('3-snow', '1.2 D + 1.6 S + L', 'strength', {
        dead: 1.2,
        snow: 1.6,
        crop: 1,
      }),
      ['crop'],
    ),
    ...withoutWhatRelieves(
      make('3-rain', '1.2 D + 1.6 R + L', 'strength', {
        dead: 1.2,
        rain: 1.6,
        crop: 1,
      }),
      ['crop'],
    ),
    ...withoutWhatRelieves(
      make('3-snow-wind', '1.2 D + 1.6 S + 0.5 W', 'strength', {
        dead: 1.2,
        snow: 1.6,
        wind: 0.5,
      }),
      ['wind'],
    ),
    ...withoutWhatRelieves(
      make('3-rain-wind', '1.2 D + 1.6 R + 0.5 W', 'strength', {
        dead: 1.2,
        rain: 1.6,
        wind: 0.5,
      }),
      ['wind'],
    ),
    ...withoutWhatRelieves(
      make('4-snow', '1.2 D + W + L + 0.5 S', 'strength', {
        dead: 1.2,
        wind: 1,
        crop: 1,
        snow: 0.5,
      }),
      ['crop', 'snow'],
    ),
    ...withoutWhatRelieves(
      make('4-rain', '1.2 D + W + L + 0.5 R', 'strength', {
        dead: 1.2,
        wind: 1,
        crop: 1,
        rain: 0.5,
      }),
      ['crop', 'rain'],
    ),
    make('5', '0.9 D + W', 'stability', { dead: 0.9, wind: 1 }),
    ...inUse('lrfd', lowHazard),
  ];
}
