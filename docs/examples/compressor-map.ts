// What does another core do to the compressor? Less loss in the core needs less pressure ratio for the same boost, and colder charge
// lets the engine swallow more: the operating point moves down and to the right on the map. How far is it from surge and from choke?
// And how wrong is the outlet temperature where one heat-capacity ratio of 1.4 stands for all of the compression?
//
// The map is made up: docs/examples/demo-map says how. npx tsx docs/examples/compressor-map.ts
import { readFileSync } from 'node:fs';
import {
  compressorMapFromJson,
  matchEngineToMap,
  outletTemperature,
  outletTemperatureVariableHeat,
  type CompressorOperatingPoint,
} from 'coldside/compressor';
import { speedDensityAirflow } from 'coldside/engine';
import { cooledTemperature } from 'coldside/intercooler';
import {
  absolutePressure,
  add,
  percent,
  pressureDifference,
  ratio,
  ratioOf,
  rotationalSpeed,
  subtract,
  temperature,
  volume,
} from 'coldside/units';

const map = compressorMapFromJson(
  readFileSync(new URL('demo-map/hill-climb-compressor.json', import.meta.url), 'utf8'),
);
console.log(String(map));
//=> hill-climb compressor: 6 speed lines from 70000 rpm to 160000 rpm, 57 points, corrected to 298.15 K and 100 kPa

const room = temperature(18, '°C');
const inlet = { inletTemperature: room, inletPressure: absolutePressure(93, 'kPa') };
/** What the boost control holds in the manifold: 1.10 bar above a barometer of 941 hPa. */
const manifoldPressure = absolutePressure(204.1, 'kPa');
const engineSpeed = rotationalSpeed(6000, 'rpm');

/** Where the engine and the compressor agree at 6000 rpm, with a core of a loss and an effectiveness. */
function withCore(loss: number, effectiveness: number): CompressorOperatingPoint {
  const outletPressure = add(manifoldPressure, pressureDifference(loss, 'kPa'));
  return matchEngineToMap(map, {
    ...inlet,
    pressureRatio: ratioOf(outletPressure, inlet.inletPressure),
    engineFlow: (delivered) =>
      speedDensityAirflow({
        volumetricEfficiency: percent(95),
        manifoldPressure: subtract(delivered.outletPressure, pressureDifference(loss, 'kPa')),
        chargeTemperature: cooledTemperature({
          hotInlet: delivered.outletTemperature,
          coolantInlet: room,
          effectiveness: percent(effectiveness),
        }),
        sweptVolume: volume(1.8, 'L'),
        engineSpeed,
      }),
  });
}

for (const [name, point] of [
  ['stock core', withCore(14, 62)],
  ['tall core', withCore(6, 78)],
] as const) {
  const { massFlow, pressureRatio, isentropicEfficiency, speed, outletTemperature: outlet } = point;
  console.log(
    `${name}: ${massFlow.in('g/s').toFixed(1)} g/s at pressure ratio ${pressureRatio.si.toFixed(3)}, efficiency ${isentropicEfficiency.in('%').toFixed(1)} %, ${Math.round(speed.in('rpm') / 100) * 100} rpm, outlet ${outlet.in('°C').toFixed(1)} °C`,
  );
  console.log(
    `  surge margin ${point.surgeMargin.in('%').toFixed(0)} % of the flow, choke margin ${point.chokeMargin.in('%').toFixed(0)} %`,
  );
}
//=> stock core: 183.0 g/s at pressure ratio 2.345, efficiency 74.0 %, 136700 rpm, outlet 126.1 °C
//=>   surge margin 44 % of the flow, choke margin 26 %
//=> tall core: 193.3 g/s at pressure ratio 2.259, efficiency 71.5 %, 136400 rpm, outlet 124.4 °C
//=>   surge margin 48 % of the flow, choke margin 20 %

console.log('Outlet temperature at a pressure ratio of 4.5, one ratio of 1.4 against heat capacities that change:');
for (const [inletC, efficiency] of [
  [25, 72],
  [50, 72],
  [50, 60],
] as const) {
  const given = {
    inletTemperature: temperature(inletC, '°C'),
    pressureRatio: ratio(4.5),
    isentropicEfficiency: percent(efficiency),
  };
  const one = outletTemperature(given);
  const changing = outletTemperatureVariableHeat(given);
  console.log(
    `  ${inletC} °C, ${efficiency} %: ${one.in('°C').toFixed(1)} and ${changing.in('°C').toFixed(1)} °C, ${subtract(one, changing).in('K').toFixed(1)} K too high`,
  );
}
//=>   25 °C, 72 %: 247.3 and 244.6 °C, 2.7 K too high
//=>   50 °C, 72 %: 290.9 and 286.8 °C, 4.2 K too high
//=>   50 °C, 60 %: 339.1 and 332.9 °C, 6.2 K too high
