// How well do the formulas of the library describe an engine that somebody else measured? The air and fuel flows of a 1.9 L turbocharged
// diesel, held against airflow by speed and density, efficiency, heat and oxygen balance, and friction models: what fits, what does not.
//
// The map and where it is from: steady-map-file.ts. npx tsx docs/examples/steady-map-against-models.ts map.csv
import { dryAirEnthalpy, gasConstantFromMolarMass, mixtureMolarMass, molarMassOfDryAir } from 'coldside/air';
import {
  brakeMeanEffectivePressureFromPower,
  frictionMeanEffectivePressure,
  frictionMeanEffectivePressureBarnesMoss,
  meanPistonSpeed,
  speedDensityAirflow,
  volumetricEfficiencyOnAmbientDensity,
} from 'coldside/engine';
import {
  brakeSpecificFuelConsumption,
  brakeThermalEfficiency,
  fuels,
  lambdaFromExhaustGas,
  lambdaFromFlows,
  oxygenMoleFractionOfAir,
  stoichiometricAirFuelRatioFromHydrogenRatio,
} from 'coldside/fuel';
import { linearModel } from 'coldside/statistics';
import {
  absolutePressure,
  column,
  density,
  molarMass,
  moleFraction,
  percent,
  power as powerOf,
  ratio,
  rotationalSpeed,
  specificFuelConsumption,
  temperature,
} from 'coldside/units';
import { displacement, isBetween, readEngine, spread, stroke, withMap, type Engine } from './steady-map-file.js';

/** Light diesel fuel is near CH1.8: Heywood, from memory. */
const hydrogenToCarbon = ratio(1.8);
/** Molar masses in g/mol: carbon and hydrogen as atoms, oxygen as the gas. */
const [CARBON, HYDROGEN, OXYGEN] = [12.011, 1.008, 31.998];
const fuelPerCarbon = CARBON + HYDROGEN * hydrogenToCarbon.si;
const waterPerCarbon = hydrogenToCarbon.si / 2;
const oxygenPerCarbon = 1 + hydrogenToCarbon.si / 4;
const { lowerHeatingValue, stoichiometricAirFuelRatio } = fuels.diesel;
const oxygenOfAir = oxygenMoleFractionOfAir.si;
const oxygenByMass = (oxygenOfAir * OXYGEN) / molarMassOfDryAir.in('g/mol');

withMap((map) => {
  const engine = readEngine(map);
  breathing(engine);
  lightLoad(engine);
  heat(engine);
  oxygen(engine);
  friction(engine);
});

/** Manifold pressure is not in the map: what would it have been, were the measured air all that the cylinders took in? */
function breathing({ speed, bmep, air }: Engine): void {
  const rpm = speed.in('rpm');
  const load = bmep.in('bar');
  const implied = impliedPressure(speed, air, 85, 40);
  const low = impliedPressure(speed, air, 90, 25);
  const high = impliedPressure(speed, air, 80, 60);
  const top = implied.indexOf(Math.max(...implied));
  const bottom = implied.indexOf(Math.min(...implied));
  console.log(`Air at ${air.length} points. At a volumetric efficiency of 85 % and 40 °C in the manifold it implies`);
  //=> Air at 858 points. At a volumetric efficiency of 85 % and 40 °C in the manifold it implies
  const pressureAt = (row: number): string =>
    `${implied[row]!.toFixed(0)} kPa at ${rpm[row]} rpm and ${load[row]!.toFixed(1)} bar of mean effective pressure`;
  console.log(`  at most ${pressureAt(top)}, and between`);
  //=>   at most 196 kPa at 2200 rpm and 13.9 bar of mean effective pressure, and between
  console.log(`  ${low[top]!.toFixed(0)} kPa (90 %, 25 °C) and ${high[top]!.toFixed(0)} kPa (80 %, 60 °C);`);
  //=>   177 kPa (90 %, 25 °C) and 222 kPa (80 %, 60 °C);
  console.log(`  at least ${pressureAt(bottom)}.`);
  //=>   at least 60 kPa at 1200 rpm and 1.3 bar of mean effective pressure.
  console.log('Fits: such engines are boosted by about 1 bar (common practice, no source).');
  const falls = fallsWithLoad(rpm, implied);
  console.log(
    `Fits: it rises with load at every speed; where it is flat at the top it falls again by ${falls.toFixed(1)} kPa at most.`,
  );
  //=> Fits: it rises with load at every speed; where it is flat at the top it falls again by 1.3 kPa at most.

  const highestAt = (at: number): string => Math.max(...implied.filter((_, row) => rpm[row] === at)).toFixed(0);
  if (!rpm.includes(900) || !rpm.includes(1200)) return;
  console.log(
    `Hard to believe: ${highestAt(900)} kPa at 900 rpm and only ${highestAt(1200)} kPa at 1200 rpm, both at full load.`,
  );
  //=> Hard to believe: 156 kPa at 900 rpm and only 132 kPa at 1200 rpm, both at full load.
}

/** Where next to no boost is expected. */
function lightLoad({ speed, bmep, air }: Engine): void {
  const rpm = speed.in('rpm');
  const load = bmep.in('bar');
  const implied = impliedPressure(speed, air, 85, 40);
  const below = [...implied.keys()].filter((row) => implied[row]! < 95);
  const highestBelow = (values: Float64Array): number => Math.max(...below.map((row) => values[row]!));
  const onAmbient = volumetricEfficiencyOnAmbientDensity.columns({
    airMassFlow: air,
    ambientDensity: density(1.184, 'kg/m³'),
    sweptVolume: displacement,
    engineSpeed: speed,
  });
  const light = onAmbient.in('%').filter((_, row) => load[row]! < 2 && isBetween(rpm[row]!, 1200, 2000));
  if (below.length > 0 && light.length > 0) {
    console.log(
      `Does not fit: below 95 kPa at ${below.length} points, up to ${highestBelow(load).toFixed(1)} bar and ${highestBelow(rpm)} rpm.`,
    );
    //=> Does not fit: below 95 kPa at 101 points, up to 4.5 bar and 2600 rpm.
    console.log(
      `  A diesel has no throttle, yet from 1200 to 2000 rpm below 2 bar its air is ${spread(light, 0)} % of its swept volume`,
    );
    //=>   A diesel has no throttle, yet from 1200 to 2000 rpm below 2 bar its air is 50 (48 to 52) % of its swept volume
    console.log(
      '  at 25 °C and 101.3 kPa. The rest is hardly anything but exhaust led back, which the map does not record:',
    );
    console.log('  speed and density give all the gas that cylinders take in, and some of that is then not fresh air.');
  }
  const fast = implied.filter((_, row) => rpm[row]! >= 3100);
  if (fast.length === 0) return;
  console.log(
    `Worth a look: from 3100 rpm never below ${Math.min(...fast).toFixed(0)} kPa, however light the load: boost that a turbine pays for.`,
  );
  //=> Worth a look: from 3100 rpm never below 130 kPa, however light the load: boost that a turbine pays for.
}

/** Airflow is proportional to manifold pressure: the flow at 100 kPa tells the pressure of any other. */
function impliedPressure(
  engineSpeed: Engine['speed'],
  air: Engine['air'],
  efficiency: number,
  celsius: number,
): Float64Array {
  const at100 = speedDensityAirflow.columns({
    volumetricEfficiency: percent(efficiency),
    manifoldPressure: absolutePressure(100, 'kPa'),
    chargeTemperature: temperature(celsius, '°C'),
    sweptVolume: displacement,
    engineSpeed,
  }).si;
  return air.si.map((measured, row) => (100 * measured) / at100[row]!);
}

/** How far a value comes down at most from what it was at less load and the same speed. The map is sorted by both. */
function fallsWithLoad(rpm: Float64Array, values: Float64Array): number {
  let [most, highest] = [0, -Infinity];
  values.forEach((value, row) => {
    highest = row > 0 && rpm[row] === rpm[row - 1] ? Math.max(highest, value) : value;
    most = Math.max(most, highest - value);
  });
  return most;
}

/** What of the heat of the fuel comes out at the crankshaft, what leaves with the exhaust, what is left for coolant, oil and the room. */
function heat({ speed, bmep, power, fuel, exhaust, exhaustTemperature }: Engine): void {
  const consumption = brakeSpecificFuelConsumption.columns({ fuelMassFlow: fuel, power });
  const brake = brakeThermalEfficiency.columns({ specificFuelConsumption: consumption, lowerHeatingValue }).in('%');
  const room = dryAirEnthalpy({ temperature: temperature(25, '°C') }).si;
  const enthalpy = dryAirEnthalpy.columns({ temperature: exhaustTemperature }).si;
  const lost = exhaust.si.map(
    (flow, row) => (100 * flow * (enthalpy[row]! - room)) / (fuel.si[row]! * lowerHeatingValue.si),
  );
  const load = bmep.in('bar');
  const loaded = (values: Float64Array): Float64Array => values.filter((_, row) => load[row]! > 5);
  console.log(
    `Brake thermal efficiency at best ${Math.max(...brake).toFixed(1)} % (${Math.min(...consumption.in('g/kWh')).toFixed(1)} g/(kW·h)); above 5 bar:`,
  );
  //=> Brake thermal efficiency at best 39.7 % (211.9 g/(kW·h)); above 5 bar:
  console.log(
    `  ${spread(loaded(brake), 0)} % of the heat of the fuel to the crankshaft, ${spread(loaded(lost), 0)} % out with the exhaust as if it were air,`,
  );
  //=>   34 (28 to 38) % of the heat of the fuel to the crankshaft, 24 (20 to 39) % out with the exhaust as if it were air,
  const rest = loaded(brake.map((share, row) => 100 - share - lost[row]!));
  console.log(`  ${spread(rest, 0)} % left, never less than ${Math.min(...rest).toFixed(0)} %.`);
  //=>   40 (29 to 47) % left, never less than 23 %.
  const usual = loaded(brake).filter((share) => share >= 30 && share <= 42).length / rest.length;
  console.log(
    `Fits: ${(100 * usual).toFixed(0)} % of them from 30 to 42 %; heat for coolant, oil and room is left at every one.`,
  );
  //=> Fits: 89 % of them from 30 to 42 %; heat for coolant, oil and room is left at every one.
  const rpm = loaded(speed.in('rpm'));
  const middle = loaded(brake).filter((_, row) => isBetween(rpm[row]!, 1100, 3000));
  console.log(
    `  From 1100 to 3000 rpm it is never below ${Math.min(...middle).toFixed(1)} %: what is less lies at both ends of the speed range.`,
  );
  //=>   From 1100 to 3000 rpm it is never below 30.0 %: what is less lies at both ends of the speed range.
}

/** Lambda from the flows of air and fuel against lambda from the oxygen that the exhaust still holds and the carbon of the fuel. */
function oxygen({ fuel, air, exhaust, exhaustOxygen }: Engine): void {
  const byFlows = lambdaFromFlows.columns({ airMassFlow: air, fuelMassFlow: fuel, stoichiometricAirFuelRatio });
  const moles = exhaust.si.map((flow) => flow / molarMassOfDryAir.in('g/mol'));
  const carbonDioxide = fuel.si.map((flow, row) => flow / fuelPerCarbon / moles[row]!);
  const oxygenLeft = exhaustOxygen.si.map((flow, row) => flow / OXYGEN / moles[row]!);
  const none = moleFraction(0, '%');
  const byExhaust = lambdaFromExhaustGas.columns({
    carbonDioxide: column('mole fraction', carbonDioxide, '1'),
    oxygen: column('mole fraction', oxygenLeft, '1'),
    carbonMonoxide: none,
    nitricOxide: none,
    hydrocarbons: none,
    hydrogenToCarbon,
    oxygenToCarbon: ratio(0),
  });
  const apart = byExhaust.si.map((value, row) => 100 * (value / byFlows.si[row]! - 1));
  console.log(
    `Lambda by the flows of air and fuel: ${spread(byFlows.si, 2)}; by the oxygen left, from the burned carbon:`,
  );
  //=> Lambda by the flows of air and fuel: 1.89 (1.51 to 3.32); by the oxygen left, from the burned carbon:
  console.log(`  ${spread(byExhaust.si, 2)}, leaner by ${spread(apart, 1)} %.`);
  //=>   1.99 (1.59 to 3.40), leaner by 5.0 (2.4 to 6.3) %.
  const expected = air.si.map((flow, row) => oxygenByMass * (flow - stoichiometricAirFuelRatio.si * fuel.si[row]!));
  const excess = exhaustOxygen.si.map((flow, row) => 100 * (flow / expected[row]! - 1));
  console.log(`Fits loosely: more oxygen is left than the flows leave, by ${spread(excess, 1)} %.`);
  //=> Fits loosely: more oxygen is left than the flows leave, by 11.2 (3.6 to 16.7) %.
  const used = air.si.map((flow, row) => (oxygenByMass * flow - exhaustOxygen.si[row]!) / fuel.si[row]!);
  const needed = oxygenByMass * stoichiometricAirFuelRatioFromHydrogenRatio({ hydrogenToCarbon }).si;
  console.log(
    `  Each gram of fuel takes ${spread(used, 2)} g of oxygen away, and CH1.8 needs ${needed.toFixed(2)}: a steady error, not scatter.`,
  );
  //=>   Each gram of fuel takes 3.05 (2.97 to 3.11) g of oxygen away, and CH1.8 needs 3.36: a steady error, not scatter.
  const ifDry = air.si.map((flow, row) => {
    const wet = 1 - carbonDioxide[row]! * waterPerCarbon;
    return (oxygenByMass * flow - exhaustOxygen.si[row]! * wet) / fuel.si[row]!;
  });
  console.log(
    `  Were the oxygen read in dried gas and reckoned on the wet flow, it would be ${spread(ifDry, 2)} g: most of the gap, if so.`,
  );
  //=>   Were the oxygen read in dried gas and reckoned on the wet flow, it would be 3.26 (3.19 to 3.40) g: most of the gap, if so.
  console.log(
    `  (287 J/(kg·K), on which the flows of the exhaust close, is right within 0.3 %: ${gasConstantOfExhaust(1.5).toFixed(1)} at lambda 1.5, ${gasConstantOfExhaust(3).toFixed(1)} at 3.)`,
  );
  //=>   (287 J/(kg·K), on which the flows of the exhaust close, is right within 0.3 %: 286.3 at lambda 1.5, 286.7 at 3.)
}

/** Of what a lean diesel leaves, per atom of carbon. */
function gasConstantOfExhaust(lambda: number): number {
  const oxygenIn = lambda * oxygenPerCarbon;
  const inert = (oxygenIn * (1 - oxygenOfAir)) / oxygenOfAir;
  const inertMass = (molarMassOfDryAir.in('g/mol') - oxygenOfAir * OXYGEN) / (1 - oxygenOfAir);
  const amounts = [1, waterPerCarbon, oxygenIn - oxygenPerCarbon, inert];
  const all = amounts.reduce((sum, amount) => sum + amount, 0);
  const masses = [CARBON + OXYGEN, 2 * HYDROGEN + OXYGEN / 2, OXYGEN, inertMass];
  const mixture = mixtureMolarMass({
    moleFractions: amounts.map((amount) => moleFraction(amount / all, '1')),
    molarMasses: masses.map((mass) => molarMass(mass, 'g/mol')),
  });
  return gasConstantFromMolarMass({ molarMass: mixture }).si;
}

/** The load at which the fuel line at one speed would reach no fuel (Willans): friction and pumping, against what models give. */
function friction(engine: Engine): void {
  console.log(
    'Fuel against power at one speed, drawn on to no fuel: friction and pumping together, bar, from 2 to 8 bar of',
  );
  console.log(
    'load (and from 1.5 to 5, from 3 to 9); the efficiency along the line; models, peak pressure taken as 60 bar:',
  );
  const excess: { rpm: number; overChenFlynn: number; overBarnesMoss: number }[] = [];
  for (const rpm of [1200, 1600, 2000, 2400, 2800, 3200, 3600, 4000]) {
    const [main, lower, upper] = [willans(engine, rpm, 2, 8), willans(engine, rpm, 1.5, 5), willans(engine, rpm, 3, 9)];
    if (main === undefined || lower === undefined || upper === undefined) continue;
    const { chenFlynn, barnesMoss } = modelsAt(rpm);
    console.log(
      `  ${rpm} rpm: ${main.friction.toFixed(2)} (${lower.friction.toFixed(2)}, ${upper.friction.toFixed(2)}), ` +
        `${main.efficiency.toFixed(0)} %; Chen-Flynn ${chenFlynn.toFixed(2)}, Barnes-Moss ${barnesMoss.toFixed(2)}`,
    );
    excess.push({ rpm, overChenFlynn: main.friction - chenFlynn, overBarnesMoss: main.friction - barnesMoss });
  }
  //=>   1200 rpm: 1.11 (0.73, 1.22), 39 %; Chen-Flynn 1.06, Barnes-Moss 1.22
  //=>   1600 rpm: 1.05 (0.80, 1.18), 41 %; Chen-Flynn 1.26, Barnes-Moss 1.34
  //=>   2000 rpm: 0.99 (1.35, 0.98), 39 %; Chen-Flynn 1.47, Barnes-Moss 1.47
  //=>   2400 rpm: 1.38 (2.04, 0.99), 41 %; Chen-Flynn 1.67, Barnes-Moss 1.62
  //=>   2800 rpm: 2.06 (2.69, 1.61), 43 %; Chen-Flynn 1.88, Barnes-Moss 1.78
  //=>   3200 rpm: 3.04 (2.59, 3.29), 46 %; Chen-Flynn 2.09, Barnes-Moss 1.96
  //=>   3600 rpm: 3.23 (3.29, 3.02), 45 %; Chen-Flynn 2.29, Barnes-Moss 2.16
  //=>   4000 rpm: 3.42 (4.13, 3.10), 44 %; Chen-Flynn 2.50, Barnes-Moss 2.37
  const slow = excess.filter(({ rpm }) => rpm <= 2800);
  const fast = excess.filter(({ rpm }) => rpm >= 3200);
  const all = (some: typeof excess): number[] => some.flatMap((at) => [at.overChenFlynn, at.overBarnesMoss]);
  if (slow.length > 0) {
    console.log(
      `Fits: up to 2800 rpm within ${Math.max(...all(slow).map(Math.abs)).toFixed(1)} bar of both, which is as well as the line itself is known.`,
    );
    //=> Fits: up to 2800 rpm within 0.5 bar of both, which is as well as the line itself is known.
  }
  if (fast.length > 0) {
    console.log(
      `Does not fit: from 3200 rpm up ${Math.min(...all(fast)).toFixed(1)} to ${Math.max(...all(fast)).toFixed(1)} bar more than both. Chen and Flynn leave pumping out, Barnes-Moss's engines`,
    );
    //=> Does not fit: from 3200 rpm up 0.9 to 1.1 bar more than both. Chen and Flynn leave pumping out, Barnes-Moss's engines
    console.log(
      '  had no turbine. Exhaust that stands that much above the manifold would do it; the map does not hold it.',
    );
  }
}

/** What a straight line through fuel against power says, where at least three points lie in the range of load. */
function willans({ speed, bmep, power, fuel }: Engine, rpm: number, from: number, to: number) {
  const engineSpeed = rotationalSpeed(rpm, 'rpm');
  const load = bmep.in('bar');
  const speeds = speed.in('rpm');
  const rows = [...speeds.keys()].filter(
    (row) => isBetween(speeds[row]!, rpm - 1, rpm + 1) && isBetween(load[row]!, from, to),
  );
  if (rows.length < 3) return undefined;
  const watts = rows.map((row) => power.si[row]!);
  const line = linearModel('Willans line', [watts.map(() => 1), watts], ['fuel at no load', 'fuel per power']);
  const [atNoLoad, perPower] = line.fit(rows.map((row) => fuel.si[row]!)).coefficients as [number, number];
  return {
    friction: brakeMeanEffectivePressureFromPower({
      power: powerOf(atNoLoad / perPower, 'W'),
      engineSpeed,
      sweptVolume: displacement,
    }).in('bar'),
    efficiency: brakeThermalEfficiency({
      specificFuelConsumption: specificFuelConsumption(perPower, 'kg/J'),
      lowerHeatingValue,
    }).in('%'),
  };
}

function modelsAt(rpm: number) {
  const engineSpeed = rotationalSpeed(rpm, 'rpm');
  return {
    chenFlynn: frictionMeanEffectivePressure({
      peakCylinderPressure: absolutePressure(60, 'bar'),
      meanPistonSpeed: meanPistonSpeed({ stroke, engineSpeed }),
    }).in('bar'),
    barnesMoss: frictionMeanEffectivePressureBarnesMoss({ engineSpeed }).in('bar'),
  };
}
