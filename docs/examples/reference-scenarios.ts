// The same core on the bench in still air, with a fan, in the car at three road speeds behind a hot radiator, with a water spray and
// with a CO2 spray: what does each make of the charge and of the power, and how much of the bench's gain survives in the car? What is a
// core chilled beforehand worth two, five and ten seconds into a pull? And what does it all cost a pull?
//
// The hill-climb special of the other examples: 1.8 L turbo four, a spring of 1.10 bar on the compressor outlet, at 640 m. All figures
// are made up to be usual; what was assumed stands beside each scenario. npm run scenarios
//
// Pressurised CO2, frost on the skin and air without oxygen hurt people: the cautions at the end of the report come first in practice,
// local rules before them.
import { mkdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { uncertainty } from 'coldside/calculation';
import {
  compareScenarios,
  conductanceAtFlow,
  heatFromEffectiveness,
  operatingPoint,
  throughPull,
  type AirCooling,
  type GasSpray,
  type Installation,
  type PullInTime,
  type WaterSpray,
} from 'coldside/charge-path';
import {
  capacityRate,
  capacityRatio,
  coolingAirThroughStack,
  effectiveness,
  numberOfTransferUnits,
  sprayCapacity,
  sprayCostPerPull,
  type StackedCore,
} from 'coldside/intercooler';
import { humidAirFromRelativeHumidity } from 'coldside/psychrometrics';
import { scenarioReport, type ReportedScenario } from 'coldside/report';
import {
  absolutePressure,
  airFuelRatio,
  costPerMass,
  density,
  gaugePressure,
  heatCapacity,
  lambda,
  length,
  mass,
  massFlow,
  percent,
  power,
  pressureDifference,
  ratio,
  relativeHumidity,
  rotationalSpeed,
  specificFuelConsumption,
  specificHeatCapacity,
  speed,
  temperature,
  temperatureDifference,
  thermalConductance,
  time,
  volumeFlow,
  type Quantity,
} from 'coldside/units';

// The installation.

const ambient = {
  pressure: absolutePressure(941, 'hPa'),
  temperature: temperature(18, '°C'),
  relativeHumidity: relativeHumidity(45, '%'),
};
const engineSpeed = rotationalSpeed(6000, 'rpm');
const stillAir: AirCooling = { by: 'air', massFlow: massFlow(0.05, 'kg/s') };

const hillClimbSpecial: Installation = {
  ambient,
  inlet: {
    loss: pressureDifference(1.5, 'kPa'),
    lossAtFlow: massFlow(165, 'g/s'),
    heating: temperatureDifference(3, 'K'),
  },
  compressor: { isentropicEfficiency: percent(72) },
  core: {
    arrangement: 'crossflowUnmixed',
    charge: { conductance: thermalConductance(600, 'W/K'), atFlow: massFlow(160, 'g/s'), exponent: ratio(0.6) },
    coolant: { conductance: thermalConductance(600, 'W/K'), atFlow: massFlow(550, 'g/s'), exponent: ratio(0.6) },
    loss: { pressure: pressureDifference(6, 'kPa'), atFlow: massFlow(160, 'g/s'), atDensity: density(1.8, 'kg/m³') },
    heatCapacity: heatCapacity(5.4, 'kJ/K'),
  },
  cooling: stillAir,
  duct: { loss: pressureDifference(1, 'kPa'), heating: temperatureDifference(2, 'K') },
  engine: {
    bore: length(81, 'mm'),
    stroke: length(87.3, 'mm'),
    cylinders: ratio(4),
    volumetricEfficiency: percent(95),
    atChargeTemperature: temperature(52, '°C'),
  },
  fuelling: {
    lambda: lambda(0.8),
    stoichiometricAirFuelRatio: airFuelRatio(14.6),
    specificFuelConsumption: specificFuelConsumption(310, 'g/kWh'),
  },
  boost: { by: 'spring', senses: 'compressor outlet', gaugePressure: gaugePressure(1.1, 'bar') },
};

// Cooling air: what drives it through what.

const air = { temperature: ambient.temperature, pressure: ambient.pressure };
const rated = { measuredFlow: massFlow(0.5, 'kg/s'), measuredDensity: density(1.15, 'kg/m³') };
const chargeCooler: StackedCore = {
  label: 'charge cooler',
  heat: power(13, 'kW'),
  measuredLoss: pressureDifference(120, 'Pa'),
  ...rated,
};
/** A radiator with coolant of 90 °C: its heat follows from the air that it gets. */
const radiator: StackedCore = {
  label: 'radiator',
  heat: (face, flow) => {
    const coolant = capacityRate({
      massFlow: massFlow(1.5, 'kg/s'),
      specificHeatCapacity: specificHeatCapacity(3.5, 'kJ/(kg·K)'),
    });
    const airRate = capacityRate({ massFlow: flow });
    const conductance = conductanceAtFlow({
      ratedConductance: thermalConductance(500, 'W/K'),
      ratedFlow: massFlow(0.5, 'kg/s'),
      exponent: ratio(0.5),
      flow,
    });
    const rates = { chargeCapacityRate: coolant, coolantCapacityRate: airRate };
    return heatFromEffectiveness({
      effectiveness: effectiveness.crossflowUnmixed({
        transferUnits: numberOfTransferUnits({ conductance, ...rates }),
        capacityRatio: capacityRatio(rates),
      }),
      ...rates,
      hotInlet: temperature(90, '°C'),
      coolantInlet: face,
    });
  },
  measuredLoss: pressureDifference(150, 'Pa'),
  ...rated,
};

const fanDrive = {
  ...air,
  roadSpeed: speed(0, 'km/h'),
  fanPressure: pressureDifference(250, 'Pa'),
  fanFreeFlow: volumeFlow(1.5, 'm³/s'),
};
const fan: AirCooling = {
  by: 'air',
  massFlow: coolingAirThroughStack(fanDrive, [chargeCooler]).flow,
  upstreamHeat: power(0.4, 'kW'),
};
const onTheRoad = (kilometresPerHour: number): AirCooling => {
  const { flow, cores } = coolingAirThroughStack({ ...air, roadSpeed: speed(kilometresPerHour, 'km/h') }, [
    radiator,
    chargeCooler,
  ]);
  return { by: 'air', massFlow: flow, temperature: cores[1]!.face };
};

const water: WaterSpray = { coolant: 'water', flow: massFlow(3, 'g/s') };
const carbonDioxide: GasSpray = {
  flow: massFlow(25, 'g/s'),
  capacity: sprayCapacity.carbonDioxide({ bottleTemperature: ambient.temperature }),
};

// The scenarios.

const scenario = (name: string, cooling: AirCooling, assumed: string): ReportedScenario => ({
  name,
  point: operatingPoint({ ...hillClimbSpecial, cooling }, engineSpeed),
  assumed,
});
const roadSpeeds = [60, 110, 160];
const sprayed = 'capture efficiency as commonly seen, 30 to 60 % of the cold';
const scenarios: readonly ReportedScenario[] = [
  scenario('bench, still air', stillAir, 'a draught of 0.05 kg/s; long enough for the core to settle'),
  scenario('bench, fan', fan, 'fan of 250 Pa without flow, 1.5 m³/s without resistance, 0.4 kW of heat of its own'),
  scenario('bench, fan, water spray', { ...fan, spray: water }, `3 g/s; ${sprayed}`),
  scenario('bench, fan, CO2 spray', { ...fan, spray: carbonDioxide }, `25 g/s from a bottle of 18 °C; ${sprayed}`),
  ...roadSpeeds.map((v) =>
    scenario(
      `car, ${v} km/h`,
      onTheRoad(v),
      'behind a radiator with coolant of 90 °C; 30 to 80 % of the free-stream head reaches the stack',
    ),
  ),
  scenario('car, 110 km/h, CO2 spray', { ...onTheRoad(110), spray: carbonDioxide }, `25 g/s; ${sprayed}`),
];
const [still, bench] = scenarios as readonly [ReportedScenario, ReportedScenario, ...ReportedScenario[]];

const column = (text: string, width: number): string => text.padStart(width);
const change = ({ point }: ReportedScenario): Quantity<'power'> => compareScenarios(still.point, point).change;
console.log('                          face °C  charge °C  boost kPa   air g/s  power kW  change kW');
for (const one of scenarios) {
  const { core, stations, boostReading, airFlow, power: made } = one.point;
  console.log(
    one.name.padEnd(25),
    column(core.coolingAirFace.in('°C').toFixed(1), 7),
    column(stations.manifold.temperature.in('°C').toFixed(1), 10),
    column(boostReading.in('kPa').toFixed(1), 10),
    column(airFlow.in('g/s').toFixed(1), 9),
    column(made.in('kW').toFixed(1), 9),
    column(change(one).in('kW').toFixed(1), 10),
  );
}
//=> bench, still air             18.0      100.0      102.7     164.3     163.3        0.0
//=> bench, fan                   18.6       45.8      102.1     180.0     178.9       15.6
//=> bench, fan, CO2 spray        14.3       42.7      102.0     181.0     179.9       16.6
//=> car, 110 km/h                62.7       81.6      102.5     169.2     168.2        4.9

// Water cannot cool air below its wet bulb, however much is sprayed.
const wetBulb = humidAirFromRelativeHumidity(ambient).wetBulb;
console.log(`wet bulb of the room: ${wetBulb.in('°C').toFixed(1)} °C`);

// How much of the bench's gain survives in the car.

const benchGain = change(bench).in('kW');
const survives = scenarios
  .filter(({ name }) => name.startsWith('car'))
  .map((one) => ({ name: one.name, share: change(one).in('kW') / benchGain }));
for (const { name, share } of survives)
  console.log(`${name}: ${(100 * share).toFixed(0)} % of the gain of the fan on the bench`);
const spray = scenarios[3]!;
const carSpray = scenarios.at(-1)!;
const car = scenarios.find(({ name }) => name === 'car, 110 km/h')!;
const gain = (from: ReportedScenario, to: ReportedScenario): Quantity<'power'> =>
  compareScenarios(from.point, to.point).change;
const told = (value: Quantity<'power'>): string =>
  `${value.in('kW').toFixed(1)} ± ${(2 * uncertainty(value).standard.in('kW')).toFixed(1)} kW`;
console.log(
  `the CO2 spray gives ${told(gain(bench, spray))} with the fan on the bench, ${told(gain(car, carSpray))} in the car at 110 km/h`,
);
//=> car, 60 km/h: 8 % of the gain of the fan on the bench
//=> car, 110 km/h: 31 % of the gain of the fan on the bench
//=> car, 160 km/h: 47 % of the gain of the fan on the bench
//=> the CO2 spray gives 1.0 ± 0.4 kW with the fan on the bench, 1.2 ± 0.6 kW in the car at 110 km/h

// A core chilled beforehand.

const onTheBench: Installation = { ...hillClimbSpecial, cooling: fan };
const pull = (celsius: number): PullInTime =>
  throughPull(onTheBench, {
    from: rotationalSpeed(3000, 'rpm'),
    to: rotationalSpeed(6500, 'rpm'),
    duration: time(10, 's'),
    coreTemperature: temperature(celsius, '°C'),
    sensor: { timeConstant: time(2, 's'), wall: { temperature: temperature(60, '°C'), share: percent(10) } },
  });
const [chilled, atRoom, soaked] = [pull(0), pull(18), pull(60)] as const;
const moments = [2, 5, 10];
const gainAt = (second: number, from: PullInTime, to: PullInTime): number => {
  const row = Math.round((second / 10) * (from.time.length - 1));
  return to.power.in('kW')[row]! - from.power.in('kW')[row]!;
};
for (const second of moments)
  console.log(
    `${second} s into the pull: chilled to 0 °C ${gainAt(second, atRoom, chilled).toFixed(2)} kW, soaked to 60 °C ${gainAt(second, atRoom, soaked).toFixed(2)} kW against a core of 18 °C`,
  );
//=> 2 s into the pull: chilled to 0 °C 3.97 kW, soaked to 60 °C -7.46 kW against a core of 18 °C
//=> 10 s into the pull: chilled to 0 °C 2.24 kW, soaked to 60 °C -5.35 kW against a core of 18 °C

// What it costs.

const tenSeconds = 10;
const price = { carbonDioxide: costPerMass(3.5, '1/kg'), water: costPerMass(0.002, '1/kg') };
const used = (flow: Quantity<'mass flow'>): Quantity<'mass'> => mass(flow.in('kg/s') * tenSeconds, 'kg');
/** Cold that the core holds, from CO2 of which 45 % does the work. */
const toChill = mass((5.4 * 18) / (0.45 * carbonDioxide.capacity.in('kJ/kg')), 'kg');
const costs = [
  { name: 'water spray', used: used(water.flow), price: price.water },
  { name: 'CO2 spray', used: used(carbonDioxide.flow), price: price.carbonDioxide },
  { name: 'core chilled from 18 to 0 °C with CO2', used: toChill, price: price.carbonDioxide },
].map((one) => ({ ...one, cost: sprayCostPerPull({ mass: one.used, price: one.price }) }));
/** To the hundredth, below which it is said to be less. */
const inMoney = (cost: Quantity<'cost'>): string => (cost.si < 0.005 ? 'under 0.01' : cost.in('1').toFixed(2));
for (const { name, used: amount, cost } of costs)
  console.log(
    `${name}: ${amount.in('kg').toFixed(3)} kg, ${inMoney(cost)} a pull of ${tenSeconds} s (3.50 for a kilogram of CO2)`,
  );
//=> CO2 spray: 0.250 kg, 0.88 a pull of 10 s (3.50 for a kilogram of CO2)

// The report.

const heading = 'One core on the bench and in the car';
const page = scenarioReport({
  heading,
  answers: [
    `Against still air on the bench, a fan is worth ${told(change(bench))} at 6000 rpm. In the car, behind a hot radiator, this much of it is left: ${survives
      .slice(0, roadSpeeds.length)
      .map(({ share }, i) => `${(100 * share).toFixed(0)} % at ${roadSpeeds[i]!} km/h`)
      .join(', ')}.`,
    `The CO2 spray adds ${told(gain(bench, spray))} to the fan on the bench, and ${told(gain(car, carSpray))} in the car at 110 km/h.`,
    `A core chilled to 0 °C is worth ${moments.map((second) => `${gainAt(second, atRoom, chilled).toFixed(1)} kW after ${second} s`).join(', ')} against one at room temperature.`,
  ],
  scenarios,
  drawn: ['bench, still air', 'bench, fan', 'bench, fan, CO2 spray', 'car, 110 km/h'],
  pulls: [
    { name: 'soaked to 60 °C', pull: soaked },
    { name: 'at room temperature', pull: atRoom },
    { name: 'chilled to 0 °C', pull: chilled, withSensor: true },
  ],
  tables: [
    {
      caption: 'Power against a core at room temperature, kW, 3000 to 6500 rpm in 10 s',
      columns: [
        { head: 'core at the beginning', align: 'left' },
        ...moments.map((second) => ({ head: `${second} s`, align: 'right' as const })),
      ],
      rows: [
        ['chilled to 0 °C', ...moments.map((second) => gainAt(second, atRoom, chilled).toFixed(2))],
        ['soaked to 60 °C', ...moments.map((second) => gainAt(second, atRoom, soaked).toFixed(2).replace('-', '−'))],
      ],
    },
    {
      caption: `Coolant of a pull of ${tenSeconds} s, at 3.50 a kilogram of CO2 and 0.002 a kilogram of water`,
      columns: [
        { head: 'what', align: 'left' },
        { head: 'kg', align: 'right' },
        { head: 'cost', align: 'right' },
      ],
      rows: costs.map(({ name, used: amount, cost }) => [name, amount.in('kg').toFixed(3), inMoney(cost)]),
    },
  ],
  worked: 'bench, fan',
});
const file = fileURLToPath(new URL('out/reference-scenarios.html', import.meta.url));
await mkdir(fileURLToPath(new URL('out', import.meta.url)), { recursive: true });
await writeFile(file, await page.html);
console.log(`Report: ${file}`);
