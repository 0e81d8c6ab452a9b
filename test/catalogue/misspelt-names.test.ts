import { describe, expect, it } from 'vitest';
import * as calculation from '../../src/calculation/index.js';
import * as compressor from '../../src/compressor/index.js';
import * as correction from '../../src/correction/index.js';
import * as engine from '../../src/engine/index.js';
import * as fuel from '../../src/fuel/index.js';
import * as intercooler from '../../src/intercooler/index.js';
import * as knock from '../../src/knock/index.js';
import * as psychrometrics from '../../src/psychrometrics/index.js';
import * as units from '../../src/units/index.js';
import * as air from '../../src/air/index.js';
import {
  absolutePressure,
  CalculationError,
  column,
  gaugePressure,
  heatCapacity,
  heatCapacityRate,
  humidityRatio,
  massFlow,
  octaneNumber,
  power,
  pressureDifference,
  ratio,
  relativeHumidity,
  rotationalSpeed,
  speed,
  temperature,
  temperatureDifference,
  volumeFraction,
  type Kind,
} from '../../src/units/index.js';
import { KINDS } from '../../src/units/internal.js';
import { demoMap, demoMapText } from '../compressor/demo-map.js';
import { benchCore, benchFlows } from '../intercooler/bench-core.js';

const warm = temperature(18, '°C');
const pressure = absolutePressure(941, 'hPa');
const humidity = relativeHumidity(45, '%');
const vapour = humidityRatio(6, 'g/kg');
const room = { temperature: warm, pressure, relativeHumidity: humidity };
const charge = { pressure: absolutePressure(204, 'kPa'), temperature: temperature(60, '°C') };
const inlet = { inletTemperature: warm, inletPressure: pressure };
const flows = {
  hotInlet: temperature(121, '°C'),
  chargeCapacityRate: heatCapacityRate(202, 'W/K'),
  chargeTransferUnits: ratio(2),
  coolantInlet: warm,
  coolantCapacityRate: heatCapacityRate(500, 'W/K'),
  coolantTransferUnits: ratio(1),
};
const metal = { heatCapacity: heatCapacity(5382, 'J/K') };
const drive = { temperature: warm, pressure, roadSpeed: speed(100, 'km/h') };
const density = units.density(1.1, 'kg/m³');
const measuredAt = { measuredLoss: pressureDifference(120, 'Pa'), measuredFlow: massFlow(0.5, 'kg/s') };
const stacked = { label: 'radiator', heat: power(24, 'kW'), ...measuredAt, measuredDensity: density };
const passes = { transferUnits: ratio(2), capacityRatio: ratio(0.5), passes: ratio(2) };
const map = demoMap();
const outlet = compressor.outletTemperature({
  inletTemperature: warm,
  pressureRatio: ratio(2),
  isentropicEfficiency: ratio(0.7),
});
const half = temperatureDifference(0.5, 'K');
const rise = column('time', [0, 10, 20, 30, 40, 50, 60, 70, 80], 's');
const loosely = (value: unknown): never => value as never;

/** For each function that takes an object and is no calculation: calls with a slip, and the slip as the error names it. */
const SLIPS: Readonly<Record<string, readonly (readonly [call: () => unknown, input: string])[]>> = {
  humidAir: [
    [() => psychrometrics.humidAir(loosely({ ...room, humidity: vapour })), 'humidity'],
    [() => psychrometrics.humidAir(room, loosely({ model: 'realgas' })), 'model'],
    [() => psychrometrics.humidAir(room, loosely({ wick: 'snow' })), 'wick'],
    [() => psychrometrics.humidAir(room, loosely({ wik: 'ice' })), 'wik'],
  ],
  humidAirFromRelativeHumidity: [
    [() => psychrometrics.humidAirFromRelativeHumidity(loosely({ ...room, humidty: humidity })), 'humidty'],
  ],
  humidAirFromWetBulb: [
    [() => psychrometrics.humidAirFromWetBulb(loosely({ pressure, temperature: warm, wetbulb: warm })), 'wetbulb'],
  ],
  humidAirFromDewPoint: [
    [() => psychrometrics.humidAirFromDewPoint(loosely({ pressure, temperature: warm, dewpoint: warm })), 'dewpoint'],
  ],
  humidAirFromHumidityRatio: [
    [() => psychrometrics.humidAirFromHumidityRatio(loosely({ ...room, humidityRatio: vapour })), 'relativeHumidity'],
  ],
  humidAirFromVapourPressure: [
    [() => psychrometrics.humidAirFromVapourPressure(loosely({ ...room, vaporPressure: pressure })), 'vaporPressure'],
  ],
  compressorMap: [
    [() => compressor.compressorMap(loosely(map), loosely({ extrapolation: 'notes' })), 'extrapolation'],
    [() => compressor.compressorMap(loosely(map), loosely({ extrapolate: 'note' })), 'extrapolate'],
    [
      () =>
        compressor.compressorMap(
          loosely({ reference: map.reference, speedLines: map.speedLines, surgeline: map.surgeLine ?? [] }),
        ),
      'surgeline',
    ],
  ],
  compressorMapFromJson: [
    [() => compressor.compressorMapFromJson(demoMapText, loosely({ extrapolation: 'notes' })), 'extrapolation'],
    [() => compressor.compressorMapFromJson({ ...(JSON.parse(demoMapText) as object), surgeline: [] }), 'surgeline'],
  ],
  pointOnMap: [
    [
      () =>
        compressor.pointOnMap(
          map,
          loosely({ ...inlet, massFlow: massFlow(190, 'g/s'), pressureRatio: ratio(2.2), humidity: vapour }),
        ),
      'humidity',
    ],
  ],
  matchEngineToMap: [
    [
      () =>
        compressor.matchEngineToMap(
          map,
          loosely({ ...inlet, pressureRatio: ratio(2.2), engineFlow: () => massFlow(190, 'g/s'), humidity: vapour }),
        ),
      'humidity',
    ],
  ],
  matchEngineToMapAtSpeed: [
    [
      () =>
        compressor.matchEngineToMapAtSpeed(
          map,
          loosely({ ...inlet, speed: rotationalSpeed(120000, 'rpm'), engineFlow: () => inlet, humidity: vapour }),
        ),
      'humidity',
    ],
  ],
  effectivenessMultiPass: [
    [() => intercooler.effectivenessMultiPass(loosely({ ...passes, cel: intercooler.effectiveness.oneShell })), 'cel'],
  ],
  transferUnitsMultiPass: [
    [
      () =>
        intercooler.transferUnitsMultiPass(
          loosely({ ...passes, cell: intercooler.transferUnits.oneShell, effectiveness: ratio(0.7) }),
        ),
      'transferUnits',
    ],
  ],
  transferUnitsCrossflowBothMixed: [
    [
      () =>
        intercooler.transferUnitsCrossflowBothMixed(
          loosely({ effectiveness: ratio(0.5), capacityRatio: ratio(1), passes: ratio(2) }),
        ),
      'passes',
    ],
  ],
  coreRating: [
    [() => intercooler.coreRating(loosely({ ...benchCore, arangement: 'counterflow' }), benchFlows), 'core.arangement'],
    [() => intercooler.coreRating(loosely({ ...benchCore, arrangement: 'cross' }), benchFlows), 'core.arrangement'],
    [
      () =>
        intercooler.coreRating(
          loosely({ ...benchCore, charge: { ...benchCore.charge, fouling: ratio(1) } }),
          benchFlows,
        ),
      'core.charge.fouling',
    ],
    [
      () =>
        intercooler.coreRating(
          loosely({
            ...benchCore,
            coolant: { ...benchCore.coolant, fins: { ...benchCore.coolant.fins, type: 'louvered' } },
          }),
          benchFlows,
        ),
      'core.coolant.fins.type',
    ],
    [
      () =>
        intercooler.coreRating(
          benchCore,
          loosely({ ...benchFlows, coolant: { ...benchFlows.coolant, liqiud: { density } } }),
        ),
      'flows.coolant.liqiud',
    ],
  ],
  coolingAirThroughStack: [
    [
      () =>
        intercooler.coolingAirThroughStack(loosely({ ...drive, fanPresure: pressureDifference(400, 'Pa') }), [stacked]),
      'drive.fanPresure',
    ],
    [() => intercooler.coolingAirThroughStack(drive, [loosely({ ...stacked, expnent: ratio(2) })]), 'cores[0].expnent'],
  ],
  soakingCore: [[() => intercooler.soakingCore(loosely({ ...metal, temperature: warm, cell: 1 })), 'cell']],
  settledCore: [[() => intercooler.settledCore(loosely({ ...metal, flows, cell: 1 })), 'cell']],
  heatSoak: [
    [
      () =>
        intercooler.heatSoak(
          intercooler.soakingCore({ ...metal, temperature: warm }),
          rise,
          loosely({ ...flows, coolantFlow: massFlow(1, 'kg/s') }),
        ),
      'flows.coolantFlow',
    ],
  ],
  timeConstantFromCoolDown: [
    [
      () =>
        intercooler.timeConstantFromCoolDown(
          rise,
          column('temperature', [60, 52, 45, 40, 36, 33, 30, 28, 26], '°C'),
          loosely({ end: warm }),
        ),
      'end',
    ],
  ],
  fitChargeTemperatureExponent: [
    [
      () =>
        engine.fitChargeTemperatureExponent([
          { power: power(300, 'kW'), chargeTemperature: temperature(60, '°C') },
          loosely({ power: power(305, 'kW'), chargeTemperature: temperature(50, '°C'), weight: 2 }),
        ]),
      'points[1].weight',
    ],
  ],
  correctionFactor: [
    [
      () => correction.correctionFactor(loosely({ standard: 'ISO 1585', room, boost: 'unboosted', inlet: warm })),
      'inlet',
    ],
    [
      () =>
        correction.correctionFactor(
          loosely({
            standard: 'DIN 70020',
            room: { pressure, temperature: warm, humidty: humidity },
            boost: 'unboosted',
          }),
        ),
      'room.humidty',
    ],
  ],
  boostedCorrectionFactor: [
    [
      () =>
        correction.boostedCorrectionFactor(
          loosely({
            boostControl: 'gauge spring',
            boost: gaugePressure(1, 'bar'),
            room: { ...room, dryPressure: pressure },
          }),
        ),
      'room.dryPressure',
    ],
    [
      () =>
        correction.boostedCorrectionFactor(
          loosely({
            boostControl: 'absolute closed loop',
            chargeTemperature: { measured: warm, reference: warm, exponant: ratio(1) },
          }),
        ),
      'chargeTemperature.exponant',
    ],
  ],
  blendOf: [
    [
      () =>
        fuel.blendOf(loosely({ base: fuel.fuels.gasoline, added: fuel.fuels.ethanol, share: volumeFraction(10, '%') })),
      'share',
    ],
  ],
  compareKnockMargins: [
    [
      () =>
        knock.compareKnockMargins({
          octaneNumber: octaneNumber(98),
          before: loosely({ ...charge, humidity: vapour }),
          after: charge,
        }),
      'before.humidity',
    ],
  ],
  explain: [
    [() => calculation.explain(outlet, loosely({ unit: 'psi' })), 'unit'],
    [() => calculation.explain(outlet, loosely({ decimal: ';' })), 'decimal'],
    [() => calculation.explain(outlet, { units: loosely({ temprature: '°F' }) }), "units['temprature']"],
    [() => calculation.explain(outlet).toLatex(loosely({ siunits: true })), 'siunits'],
  ],
  measured: [
    [() => calculation.measured('room', warm, loosely({ halfWidth: half, distribtion: 'normal' })), 'distribtion'],
  ],
  sensor: [[() => calculation.sensor('temperature', loosely({ label: 'probe', halfWidth: half, levl: 0.9 })), 'levl']],
  statedTogether: [
    [
      () =>
        calculation.statedTogether(
          'line',
          { slope: { value: ratio(1), standardUncertainty: ratio(0.1) } },
          loosely({ correlations: [], degreeOfFreedom: 9 }),
        ),
      'degreeOfFreedom',
    ],
  ],
  monteCarlo: [[() => calculation.monteCarlo(outlet, loosely({ seed: 1, confidence: 0.9 })), 'confidence']],
  whatIf: [
    [() => calculation.whatIf(outlet, [[warm, temperature(20, '°C')]], loosely({ badRows: 'skip' })), 'badRows'],
  ],
  solve: [
    [
      () =>
        calculation.solve(
          loosely({ label: 'x', kind: 'ratio', unit: '1', between: [ratio(0), ratio(1)], tolerance: 1e-3 }),
          (x) => ({ residual: x }),
        ),
      'tolerance',
    ],
  ],
  parse: [
    [() => units.parse('power', '1,5 kW', loosely({ decimals: ',' })), 'decimals'],
    [() => units.parse('power', '1,5 kW', loosely({ decimal: 'comma' })), 'decimal'],
  ],
  formatValue: [
    [() => units.formatValue(warm, loosely({ digits: 3 })), 'digits'],
    [() => units.formatValue(warm, { units: { temperature: 'Celsius degrees' } }), "units['temperature']"],
  ],
  formatColumn: [[() => units.formatColumn(rise, loosely({ digits: 3 })), 'digits']],
};

/** Functions that take no object by name, or one of which every field is needed and told apart by what reads it. */
const OTHERS: readonly string[] = [
  ...['add', 'subtract', 'scale', 'ratioOf', 'absolute', 'gauge', 'compareValues', 'sameQuantity', 'known', 'forget'],
  ...['quantity', 'column', 'percent', 'isQuantity', 'isColumn', 'isKind', 'kindsOfUnit', 'findUnit', 'unitOf'],
  ...['unitChoices', 'constructorName', 'differenceKind', 'readNumber', 'revive', 'CalculationError', 'UnitError'],
  ...['assumed', 'input', 'each', 'output', 'calculation', 'constant', 'source', 'commonPractice', 'derived'],
  ...['workOf', 'works', 'mean', 'meanOfRepeats', 'contrastOfRepeats', 'measuredTogether', 'uncertainty'],
  ...['sensitivity', 'coverageFactorOf', 'isCorrectionStandard', 'standardOfTradeName', 'fuelPropertyTable'],
  'referenceDensity',
];

const TOPICS = { air, calculation, compressor, correction, engine, fuel, intercooler, knock, psychrometrics, units };

describe('a misspelt name or choice', () => {
  it.each(Object.entries(SLIPS).flatMap(([name, calls]) => calls.map(([call, input]) => [name, input, call] as const)))(
    'is refused by %s, which names %s',
    (_, input, call) => {
      let error: unknown;
      try {
        call();
      } catch (thrown) {
        error = thrown;
      }
      if (!(error instanceof CalculationError)) throw new Error('was accepted', { cause: error });
      expect(error.problems.map((problem) => [problem.code, problem.input])).toContainEqual(['unknown', input]);
    },
  );

  it('is looked for in every function that takes an object and is no calculation', () => {
    const constructors = new Set((Object.keys(KINDS) as Kind[]).map(units.constructorName));
    const unlisted = Object.values(TOPICS).flatMap((topic) =>
      Object.entries(topic)
        .filter(([, value]) => typeof value === 'function' && !('spec' in value))
        .map(([name]) => name)
        .filter((name) => !(name in SLIPS) && !OTHERS.includes(name) && !constructors.has(name)),
    );
    expect(unlisted).toEqual([]);
  });
});
