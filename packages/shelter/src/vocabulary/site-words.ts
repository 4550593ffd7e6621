/** What can be said of a site. */
import type { Entry } from './entry.ts';
import { fact } from './write.ts';

export const siteFacts: readonly Entry[] = [
  fact(
    'gust',
    '{value: speed} [once per {period: time}]',
    'The design gust: 3 seconds long, 10 m over open country, and how seldom it comes (once in 50 years when not said).',
    'gust 42 m/s once per 50 yr',
    { required: true },
  ),
  fact(
    'exposure',
    '{value: word sheltered|open|coastal}',
    'Ground around the site: among trees and buildings, open fields, or flat open coast.',
    'exposure open',
  ),
  fact('elevation', '{value: length}', 'Height over the sea.', 'elevation 480 m'),
  fact(
    'topography',
    '{value: ratio}',
    'How much the land speeds the wind up: 1 on flat ground, more on a crest.',
    'topography 1.1',
  ),
  fact('snow', '{value: pressure}', 'Snow load on the ground.', 'snow 0.4 kPa'),
  fact('rain', '{value: rain-rate}', 'The heaviest rain it must cope with.', 'rain 110 mm/h'),
  fact(
    'soil',
    '{value: word sand-loose|sand|gravel|loam|clay-soft|clay|clay-stiff|rock} [{wet: word soaked|drained} when it storms]',
    'The soil the feet stand in, and whether a storm finds it soaked (when not said) or it drains so well that it stays firm. Soaked ground holds about half.',
    'soil loam drained when it storms',
  ),
  fact(
    'ground',
    '{value: word firm|giving}',
    'Whether feet stand firm in the frame analysis, or give as the soil around them does. Firm when not said.',
    'ground giving',
  ),
  fact(
    'coldest',
    '{value: temperature}',
    'Coldest pipe on the day of building, and coldest film in use.',
    'coldest 2 degC',
  ),
  fact('hottest', '{value: temperature}', 'Hottest pipe or film in the sun.', 'hottest 60 degC'),
  fact('latitude', '{value: angle}', 'Latitude, south negative.', 'latitude -28 deg'),
  fact(
    'basis',
    '{value: word asce7-asd|asce7-strength|eurocode}',
    'Which published loads and combinations are used.',
    'basis asce7-asd',
  ),
  fact(
    'hazard',
    '{value: word low|normal}',
    'low: the class of the standard for farm structures that few people enter. Your code office decides whether it may be used.',
    'hazard low',
  ),
  fact(
    'dry-day',
    'from {coldest: temperature} to {hottest: temperature} on {on: date}',
    'Coolest and warmest air of a day in the dry season, and a date it may fall on. With sunshine and breeze it tells how much water the crop drinks.',
    'dry-day from 14 degC to 29 degC on 2026-10-15',
  ),
  fact('sunshine', '{value: time}', 'Hours of sun of a day in the dry season.', 'sunshine 9 h'),
  fact(
    'breeze',
    '{value: speed}',
    'Mean wind of a day in the dry season, at the height of a man.',
    'breeze 2 m/s',
  ),
];
