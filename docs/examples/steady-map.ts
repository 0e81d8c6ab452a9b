// What does a measured steady-state map of a 1.9 L turbocharged diesel say: power, mean effective pressure, fuel consumption, mixture?
// And are its flows, volumes and temperatures consistent with one another?
//
// The map and where it is from: steady-map-file.ts. npx tsx docs/examples/steady-map.ts map.csv
import { calculation, derived, explain, input, output } from 'coldside/calculation';
import { brakeMeanEffectivePressure, powerFromTorque } from 'coldside/engine';
import { airFuelRatioFromLambda, brakeSpecificFuelConsumption, fuels, lambdaFromFlows } from 'coldside/fuel';
import { specificGasConstant } from 'coldside/units';
import { airFromExhaust, displacement, spread, withMap, type MapReader } from './steady-map-file.js';

const exhaustPressure = calculation({
  name: 'exhaust pressure from its flows',
  task: 'describe the engine',
  inputs: {
    /** Mass flow of the exhaust. */
    massFlow: input('m', 'mass flow', { min: 0, max: 10, typical: 0.07 }),
    /** Volume flow of the exhaust where its temperature was measured. */
    volumeFlow: input('V', 'volume flow', { min: 1e-4, max: 10, typical: 0.15 }),
    /** Temperature of the exhaust. */
    temperature: input('T', 'temperature', { min: 250, max: 1500, typical: 770 }),
    /** Gas constant of the exhaust; a lean one is nearly air. */
    gasConstant: input('R', 'specific gas constant', { min: 250, max: 320, typical: 287 }),
  },
  output: output('p', 'absolute pressure', 'kPa'),
  formula: 'm / V * R * T',
  si: (m, V, T, R) => (m / V) * R * T,
  sources: [derived('perfect gas')],
});

withMap(answer);

function answer(map: MapReader): void {
  const engineSpeed = map('rotational speed', 'speed_rpm', 'rpm');
  const torque = map('torque', 'torque_Nm', 'N·m');
  const fuelFlow = map('mass flow', 'fuel_g_s', 'g/s');
  const exhaustFlow = map('mass flow', 'exhaust_flow_g_s', 'g/s');

  const power = powerFromTorque.columns({ torque, engineSpeed });
  const pressure = brakeMeanEffectivePressure.columns({ torque, sweptVolume: displacement });
  const consumption = brakeSpecificFuelConsumption.columns({ fuelMassFlow: fuelFlow, power });
  const airFlow = airFromExhaust.columns({ exhaustFlow, fuelFlow });
  const { stoichiometricAirFuelRatio } = fuels.diesel;
  const lambda = lambdaFromFlows.columns({ airMassFlow: airFlow, fuelMassFlow: fuelFlow, stoichiometricAirFuelRatio });
  const mixture = airFuelRatioFromLambda.columns({ lambda, stoichiometricAirFuelRatio });

  const at = (row: number): string =>
    `${power.at(row).in('kW').toFixed(2)} kW, ${torque.at(row).in('N·m').toFixed(2)} N·m at ${engineSpeed.at(row).in('rpm')} rpm`;
  console.log(`${torque.length} points above 20 N·m that the engine attains, ${displacement.in('L').toFixed(3)} L`);
  //=> 858 points above 20 N·m that the engine attains, 1.896 L
  console.log(`Most power: ${at(highest(power.si))}`);
  //=> Most power: 66.44 kW, 162.69 N·m at 3900 rpm
  console.log(`Most torque: ${at(highest(torque.si))}`);
  //=> Most torque: 43.16 kW, 216.92 N·m at 1900 rpm
  console.log(`Highest brake mean effective pressure: ${Math.max(...pressure.in('bar')).toFixed(2)} bar`);
  //=> Highest brake mean effective pressure: 14.38 bar
  console.log(`Lowest consumption: ${Math.min(...consumption.in('g/kWh')).toFixed(1)} g/(kW·h)`);
  //=> Lowest consumption: 211.9 g/(kW·h)
  console.log(
    `Air-fuel ratio, air being exhaust less fuel: ${spread(mixture.in('1'), 0)}, lambda ${spread(lambda.in('1'), 1)}`,
  );
  //=> Air-fuel ratio, air being exhaust less fuel: 27 (22 to 48), lambda 1.9 (1.5 to 3.3)

  const exhaust = exhaustPressure.columns({
    massFlow: exhaustFlow,
    volumeFlow: map('volume flow', 'exhaust_vol_flow_m3_s', 'm³/s'),
    temperature: map('temperature', 'exhaust_temp_C', '°C'),
    gasConstant: specificGasConstant(287, 'J/(kg·K)'),
  });
  console.log(
    `Pressure at which mass flow, volume flow and temperature of the exhaust agree: ${spread(exhaust.in('kPa'), 1)} kPa,`,
  );
  //=> Pressure at which mass flow, volume flow and temperature of the exhaust agree: 101.8 (99.7 to 103.2) kPa,
  console.log('which is the air around: the flows, volumes and temperatures are consistent with one another.');

  const point = engineSpeed.in('rpm').findIndex((speed, row) => speed === 2400 && torque.in('N·m')[row] === 203.36);
  if (point < 0) return;
  console.log(
    `At 2400 rpm and 203.36 N·m: ${power.at(point).in('kW').toFixed(2)} kW, ${pressure.at(point).in('bar').toFixed(2)} bar,`,
  );
  //=> At 2400 rpm and 203.36 N·m: 51.11 kW, 13.48 bar,
  console.log(
    `air ${airFlow.at(point).in('g/s').toFixed(2)} g/s, air-fuel ratio ${mixture.at(point).in('1').toFixed(2)}, worked out:`,
  );
  //=> air 69.36 g/s, air-fuel ratio 21.74, worked out:
  console.log(String(explain(consumption.at(point))));
}

function highest(values: Float64Array): number {
  return values.indexOf(Math.max(...values));
}
