/** Load combinations of EN 1990. */
import { type Combination, combination, type Factors, withoutWhatRelieves } from './combination.ts';

/**
 * EN 1990 eq. 6.10 with table A1.2: STR 1.35 G + 1.5 Q, EQU 0.9 G + 1.5 Q. ψ0: wind 0.6, snow 0.5
 * (below 1000 m), crop 0.7; ponded water is taken as a variable action with ψ0 = 0.7 (EN names none).
 * In the low-hazard class RC1 unfavourable factors are multiplied by K_FI = 0.9 (table B3).
 */
export function eurocode(lowHazard: boolean): Combination[] {
  const k = lowHazard ? 0.9 : 1;
  const g = 1.35 * k;
  const q = 1.5 * k;
  const source = 'en1990:6.10';
  const make = (id: string, title: string, use: Combination['use'], factors: Partial<Factors>): Combination =>
    combination(`en-${id}`, title, use, source, factors);
  const service = (id: string, title: string, factors: Partial<Factors>): Combination =>
    combination(`en-${id}`, title, 'service', 'en1990:6.14', factors);
  return [
    ...withoutWhatRelieves(
      make('g', 'STR: permanent and crop', 'strength', {
        dead: g,
        crop: q,
      }),
      ['crop'],
    ),
    ...withoutWhatRelieves(
      make('snow', 'STR: snow leads', 'strength', {
        dead: g,
        snow: q,
        crop: 0.7 * q,
        wind: 0.6 * q,
      }),
      ['crop', 'wind'],
    ),
    ...withoutWhatRelieves(
      make('rain', 'STR: ponded water leads', 'strength', {
        dead: g,
        rain: q,
        crop: 0.7 * q,
        wind: 0.6 * q,
      }),
      ['crop', 'wind'],
    ),
    ...withoutWhatRelieves(
      make('wind', 'STR: wind leads', 'strength', {
        dead: g,
        wind: q,
        crop: 0.7 * q,
        snow: 0.5 * q,
      }),
      ['crop', 'snow'],
    ),
    ...withoutWhatRelieves(
      make('wind-rain', 'STR: wind leads, with ponded water', 'strength', {
        dead: g,
        wind: q,
        crop: 0.7 * q,
        rain: 0.7 * q,
      }),
      ['crop', 'rain'],
    ),
    ...withoutWhatRelieves(
      make('person', 'STR: a person leads', 'strength', {
        dead: g,
        person: q,
        crop: 0.7 * q,
      }),
      ['crop'],
    ),
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
