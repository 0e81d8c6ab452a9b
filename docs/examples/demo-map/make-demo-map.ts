// Where the demo compressor map comes from: not from any product, but from the work that a wheel of 56 mm does at each speed and from
// losses drawn up by hand. So temperature rise, pressure ratio, efficiency and speed agree with one another, as on a real map.
//
// npx tsx docs/examples/demo-map/make-demo-map.ts
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { CompressorMapRecord } from 'coldside/compressor';

const TIP_DIAMETER = 0.056;
const T = 298.15;
const HEAT_CAPACITY = 1005;
const DENSITY = 100e3 / (287.042 * T);
const SOUND = Math.sqrt(1.4 * 287.042 * T);

const speeds = [70, 90, 110, 130, 145, 160];
/** Flow over choke flow; a line begins at the first of these right of surge. */
const flows = [0.26, 0.34, 0.42, 0.5, 0.58, 0.66, 0.74, 0.82, 0.89, 0.95, 1];

/** Pressure ratio and efficiency of the wheel at a speed in 1000 rpm and a flow in kg/s. */
export function wheel(thousands: number, flow: number): { ratio: number; efficiency: number } {
  const tip = tipSpeed(thousands);
  const mach = tip / SOUND;
  const work = (0.81 - flow / (DENSITY * TIP_DIAMETER ** 2 * tip)) * tip ** 2;
  const best = 0.765 - 0.1 * (mach - 0.95) ** 2 - (mach > 1.05 ? 0.35 * (mach - 1.05) ** 2 : 0);
  const share = flow / chokeFlow(thousands);
  const at = 0.66 + 0.05 * mach;
  const loss = share < at ? 0.45 * ((at - share) / at) ** 2 : (1 - 0.52 / best) * ((share - at) / (1 - at)) ** 2;
  const efficiency = best * (1 - loss);
  return { efficiency, ratio: (1 + (efficiency * work) / (HEAT_CAPACITY * T)) ** 3.5 };
}

export function chokeFlow(thousands: number): number {
  return 0.3 * -Math.expm1(-1.35 * (tipSpeed(thousands) / SOUND) ** 1.5);
}

export function surgeFlow(thousands: number): number {
  return chokeFlow(thousands) * (0.14 + 0.27 * (tipSpeed(thousands) / SOUND));
}

function tipSpeed(thousands: number): number {
  return (Math.PI * TIP_DIAMETER * thousands * 1000) / 60;
}

const rounded = (value: number, places: number): number => Number(value.toFixed(places));

/** The map as data, its figures rounded as a reader of a printed map would. */
export function demoMap(): CompressorMapRecord {
  const point = (thousands: number, flow: number): [number, number, number] => {
    const { ratio, efficiency } = wheel(thousands, rounded(flow, 4));
    return [rounded(flow, 4), rounded(ratio, 3), rounded(efficiency, 3)];
  };
  return {
    name: 'hill-climb compressor',
    reference: { temperature: '298.15 K', pressure: '100 kPa' },
    units: { correctedSpeed: 'rpm', correctedFlow: 'kg/s' },
    speedLines: speeds.map((thousands) => {
      const [surge, choke] = [surgeFlow(thousands), chokeFlow(thousands)];
      const right = flows.map((share) => share * choke).filter((flow) => flow > 1.06 * surge);
      return { correctedSpeed: thousands * 1000, points: [surge, ...right].map((flow) => point(thousands, flow)) };
    }),
  };
}

/** One line for each speed and each point, so that a person can read it and a change shows in a comparison of versions. */
export function asText(map: CompressorMapRecord): string {
  const points = JSON.stringify(map, null, 2).replaceAll(/\[\s+([\d.]+),\s+([\d.]+),\s+([\d.]+)\s+\]/g, '[$1, $2, $3]');
  return `${points}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(fileURLToPath(new URL('hill-climb-compressor.json', import.meta.url)), asText(demoMap()));
}
