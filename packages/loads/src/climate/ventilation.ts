/** Heat under film: sun in, air and skin out. */
import { given, type Step } from '../step.ts';

/** Heat in a cubic metre of air for one degree, J/(m³·K), at 30 °C and sea level: air tables, from memory. */
const AIR_HEAT = 1.164 * 1007;

export interface VentilatedHouse {
  readonly floor: number;
  /** Film area that loses heat, m2. */
  readonly skin: number;
  /** Light let through, 0..1. */
  readonly light: number;
  /** Sun on level ground, W/m². */
  readonly sun: number;
  /** Open area low on one side (inlet) and on the other side or high up (outlet), m2. */
  readonly inlet: number;
  readonly outlet: number;
  /** Open share of a screen in the openings, 1 without. */
  readonly porosity: number;
  /** Height between the middles of inlet and outlet, m. */
  readonly height: number;
  /** Wind across the openings, m/s. */
  readonly wind: number;
  /** Outside temperature, °C. */
  readonly outside: number;
}

export interface HeatBalance {
  /** Rise of the air over outside, K. */
  readonly rise: number;
  /** Air through the house, m³/s. */
  readonly airflow: number;
  /** Air changes need the volume; this is the flow per floor area, m/s. */
  readonly flowPerArea: number;
  readonly steps: readonly Step[];
}

/** Share of the sun that leaves as vapour of a full crop (ASABE EP406 practice, from memory). */
const EVAPORATED = 0.5;
/** Heat through one film and wind on it, W/(m²·K) (ASABE EP406 single polyethylene, from memory: 6 to 7). */
const SKIN_LOSS = 6.5;
/** Opening effectiveness for wind: ASHRAE has 0.5 to 0.6 square on and 0.25 to 0.35 slantwise, from memory. */
const WIND_EFFECT = 0.35;
/** Discharge coefficient of an opening: from memory. */
const DISCHARGE = 0.6;

/** Loss of flow through a screen of open share `porosity`: the screen as an orifice in series with the opening. */
export function screenFactor(porosity: number): number {
  if (porosity >= 1) return 1;
  // Orifice loss of a screen, (1 - p²)/p² of the velocity head (Idelchik's form), against 1/C_d² of the opening.
  const own = (1 - porosity ** 2) / porosity ** 2;
  const opening = 1 / DISCHARGE ** 2;
  return Math.sqrt(opening / (opening + own));
}

/**
 * Steady rise of air temperature, K: (1 - E) τ I A_floor = (U A_skin + ρ c V) ΔT, with V of wind and of
 * the chimney effect of that same rise, put together as roots of squares (ASHRAE). Solved by halving.
 */
export function heatBalance(house: VentilatedHouse): HeatBalance {
  if (!(house.floor > 0 && house.skin > 0)) throw new RangeError('a heat balance needs floor and skin');
  const gain = (1 - EVAPORATED) * house.light * house.sun * house.floor;
  const screen = screenFactor(house.porosity);
  const flow = (rise: number): number =>
    Math.hypot(windFlow(house) * screen, chimneyFlow(house, rise) * screen);
  const surplus = (rise: number): number => gain - (SKIN_LOSS * house.skin + AIR_HEAT * flow(rise)) * rise;
  let low = 0;
  let high = gain / (SKIN_LOSS * house.skin);
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (surplus(middle) > 0) low = middle;
    else high = middle;
  }
  const airflow = flow(low);
  return {
    rise: low,
    airflow,
    flowPerArea: airflow / house.floor,
    steps: [
      {
        symbol: 'V',
        prose: true,
        meaning: 'air through the openings',
        formula:
          'V = √(V_wind² + V_chimney²) · screen, both through the opening; the chimney draws by the rise below',
        inputs: [
          given('v', 'wind', house.wind, 'speed'),
          given('screen', 'flow the screen leaves', screen, 'ratio'),
        ],
        value: airflow,
        kind: 'flow',
        source: 'ashrae:natural-ventilation',
      },
      {
        symbol: 'ΔT',
        meaning: 'rise over the air outside',
        formula: '(1 - E) τ I A_f = (U A_s + ρ_c V) ΔT',
        inputs: [
          given('E', 'share that leaves as vapour', EVAPORATED, 'ratio'),
          given('τ', 'light let through', house.light, 'ratio'),
          given('I', 'sun', house.sun, 'irradiance'),
          given('A_f', 'floor', house.floor, 'area'),
          given('A_s', 'film', house.skin, 'area'),
          given('ρ_c', 'heat of air, J for each m³ and degree', AIR_HEAT, 'ratio'),
          given('U', 'skin loss', SKIN_LOSS, 'heat-loss'),
        ],
        value: low,
        kind: 'temperature-difference',
        source: 'ep406:balance',
      },
    ],
  };
}

function windFlow(house: VentilatedHouse): number {
  return WIND_EFFECT * Math.min(house.inlet, house.outlet) * house.wind;
}

/** Chimney flow with inlet and outlet in series: C_d A_eff √(2 g h ΔT/T). */
function chimneyFlow(house: VentilatedHouse, rise: number): number {
  if (house.inlet <= 0 || house.outlet <= 0) return 0;
  const area = 1 / Math.sqrt(house.inlet ** -2 + house.outlet ** -2);
  return DISCHARGE * area * Math.sqrt((2 * 9.80665 * house.height * rise) / (house.outside + 273.15));
}

/**
 * Light at the crop over light outside: each film layer, dust, and the shade of frame and fastenings.
 * @param film light let through by one new layer; `dust` and `frame` as lost shares (0.1 and 0.1 are common practice)
 */
export function lightTransmission(film: number, layers: 1 | 2, dust: number, frame: number): number {
  return film ** layers * (1 - dust) * (1 - frame);
}
