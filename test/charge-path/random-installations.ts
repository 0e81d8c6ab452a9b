import type { AirCooling, BoostControl, CoreSide, Fuelling, Installation } from '../../src/charge-path/index.js';
import { arrangements } from '../../src/charge-path/arrangements.js';
import {
  absolutePressure,
  airFuelRatio,
  area,
  density,
  gaugePressure,
  humidityRatio,
  lambda,
  massFlow,
  meanEffectivePressure,
  power,
  pressureDifference,
  ratio,
  relativeHumidity,
  rotationalSpeed,
  specificEnergy,
  specificFuelConsumption,
  specificHeatCapacity,
  temperature,
  temperatureDifference,
  thermalConductance,
  torque,
  volume,
  type Quantity,
} from '../../src/units/index.js';

/** What a draw decides: a share between 0 and 1. */
export type Random = () => number;

/** An installation and an engine speed, both possible; whether they have a steady point is another matter. */
export interface Draw {
  readonly installation: Installation;
  readonly engineSpeed: Quantity<'rotational speed'>;
}

export const CONTROLS = [
  'spring at outlet',
  'spring at manifold',
  'drooping spring',
  'closed loop, absolute',
  'closed loop, gauge',
  'fixed compressor speed',
  'displacement blower',
  'fixed wastegate',
  'held torque',
] as const;

/** What a random installation is to be; everything not said is drawn. */
export interface Wish {
  readonly control?: (typeof CONTROLS)[number];
  readonly cooling?: 'air' | 'liquid';
  readonly fuelling?: 'lambda held' | 'fuel held';
  readonly isPlain?: boolean;
}

/** Draws an installation over a wide range: from a motorcycle to a lorry, from a mountain in frost to a hot coast. */
export function randomInstallation(random: Random, wish: Wish = {}): Draw {
  const between = (low: number, high: number): number => low + (high - low) * random();
  const spread = (low: number, high: number): number => low * (high / low) ** random();
  const oneOf = <T>(choices: readonly T[]): T =>
    choices[Math.min(choices.length - 1, Math.floor(random() * choices.length))]!;
  const isSaid = (share: number): boolean => random() < share;

  const barometer = between(60e3, 105e3);
  const sweptVolume = spread(0.6e-3, 6e-3);
  const revolutionsPerSecond = between(1000, 9000) / 60;
  // About what the engine takes at a pressure ratio of 2, which cores and blowers are commonly chosen for.
  const usualFlow = 2.2 * sweptVolume * (revolutionsPerSecond / 2) * (barometer / 1e5);
  const sized = (low: number, high: number): number => Math.min(5, Math.max(2e-4, usualFlow * spread(low, high)));

  const side = (flow: number, perFlow: number): CoreSide => ({
    conductance: thermalConductance(Math.max(1, flow * perFlow * spread(0.3, 3)), 'W/K'),
    atFlow: massFlow(flow, 'kg/s'),
    exponent: ratio(between(0.3, 0.8)),
  });
  const coolingFlow = sized(0.3, 10);
  const air = {
    massFlow: massFlow(coolingFlow, 'kg/s'),
    ...(isSaid(0.5) ? { temperature: temperature(between(-25, 55), '°C') } : {}),
    ...(isSaid(0.3) ? { upstreamHeat: power(coolingFlow * between(0, 40), 'kW') } : {}),
    ...(isSaid(0.2)
      ? {
          spray: {
            flow: massFlow(coolingFlow * between(0, 0.03), 'kg/s'),
            capacity: specificEnergy(250, 'kJ/kg'),
            captureEfficiency: ratio(between(0.3, 1)),
          },
        }
      : {}),
  };
  const isLiquid = (wish.cooling ?? (isSaid(0.2) ? 'liquid' : 'air')) === 'liquid';
  const liquidFlow = sized(0.5, 3);
  const cooling: Installation['cooling'] = isLiquid
    ? {
        by: 'liquid',
        liquidFlow: massFlow(liquidFlow, 'kg/s'),
        liquidHeatCapacity: specificHeatCapacity(between(3200, 4200), 'J/(kg·K)'),
        radiator: {
          arrangement: oneOf(arrangements),
          liquid: side(liquidFlow, 8000),
          air: side(coolingFlow, 2000),
        },
        air,
      }
    : { by: 'air', ...air };

  const passage = (loss: number, heating: number): Installation['inlet'] & object => ({
    ...(isSaid(0.8) ? { loss: pressureDifference(between(0, loss), 'Pa') } : {}),
    ...(isSaid(0.3) ? { lossAtFlow: massFlow(sized(0.5, 2), 'kg/s') } : {}),
    ...(isSaid(0.8) ? { heating: temperatureDifference(between(-2, heating), 'K') } : {}),
  });
  const control = wish.control ?? oneOf(CONTROLS);
  const exhaust = isSaid(0.3)
    ? {
        exhaust: {
          ...(control === 'fixed wastegate' ? {} : { pressureOverManifold: ratio(between(0.6, 1.8)) }),
          pressureOverManifoldAtReference: ratio(between(0.8, 1.3)),
          compressionRatio: ratio(between(8, 14)),
        },
      }
    : {};
  const lambdaHeld = between(0.72, 1.3);
  const stoichiometric = between(9, 15);
  const mixture =
    (wish.fuelling ?? (isSaid(0.1) ? 'fuel held' : 'lambda held')) === 'lambda held'
      ? { lambda: lambda(lambdaHeld) }
      : { fuelMassFlow: massFlow((usualFlow / stoichiometric) * between(0.8, 1.3), 'kg/s') };
  const fuelling: Fuelling = {
    stoichiometricAirFuelRatio: airFuelRatio(stoichiometric),
    ...mixture,
    ...(isSaid(0.6)
      ? { specificFuelConsumption: specificFuelConsumption(between(220, 400), 'g/kWh') }
      : {
          indicated: {
            efficiency: ratio(between(0.25, 0.42)),
            lowerHeatingValue: specificEnergy(between(27, 44), 'MJ/kg'),
            frictionPressure: meanEffectivePressure(between(0.5, 3), 'bar'),
          },
        }),
  };
  const boost = randomBoost(control, { between, spread }, { usualFlow, sweptVolume, barometer });
  const installation: Installation = {
    ambient: {
      pressure: absolutePressure(barometer, 'Pa'),
      temperature: temperature(between(-30, 45), '°C'),
      ...(isSaid(0.7)
        ? { relativeHumidity: relativeHumidity(random(), '1') }
        : { humidityRatio: humidityRatio(between(0, 3), 'g/kg') }),
    },
    inlet: passage(4000, 15),
    compressor: {
      isentropicEfficiency: ratio(between(0.45, 0.85)),
      ...(isSaid(0.4) ? { mechanicalEfficiency: ratio(between(0.85, 1)) } : {}),
      ...(control === 'displacement blower' || control === 'fixed compressor speed'
        ? { drivenBy: 'crankshaft' as const }
        : {}),
    },
    core: {
      arrangement: oneOf(arrangements),
      ...(isSaid(0.2) ? { passes: ratio(2) } : {}),
      charge: side(sized(0.5, 2), 3500),
      coolant: side(isLiquid ? liquidFlow : coolingFlow, isLiquid ? 8000 : 2000),
      loss: {
        pressure: pressureDifference(spread(300, 30e3), 'Pa'),
        atFlow: massFlow(sized(0.5, 2), 'kg/s'),
        atDensity: density(between(1, 3), 'kg/m³'),
        ...(isSaid(0.7) ? { exponent: ratio(between(1.5, 2)) } : {}),
      },
    },
    cooling,
    duct: passage(3000, 15),
    engine: {
      sweptVolume: volume(sweptVolume, 'm³'),
      volumetricEfficiency: ratio(between(0.6, 1.15)),
      atChargeTemperature: temperature(between(20, 80), '°C'),
      densityExponent: ratio(between(0.3, 1)),
      ...exhaust,
    },
    fuelling,
    boost,
  };
  const whole = isSaid(0.1) ? withAirComingBack(installation, between) : installation;
  return { installation: withWater(whole), engineSpeed: rotationalSpeed(revolutionsPerSecond * 60, 'rpm') };
}

/** The same with some of the cooling air breathed again, by the compressor and by the face of the core. */
function withAirComingBack(installation: Installation, between: (low: number, high: number) => number): Installation {
  const share = { recirculatedShare: ratio(between(0, 0.3)) };
  return {
    ...withAir(installation, (air) => ({ ...air, ...share })),
    inlet: { ...installation.inlet, recirculatedShare: ratio(between(0, 0.1)) },
  };
}

/** The same with water in the place of the gas that is sprayed, where the air is so warm that it does not freeze. */
function withWater(installation: Installation): Installation {
  if (installation.ambient.temperature.si < 293.15) return installation;
  return withAir(installation, ({ spray, ...air }) => {
    if (spray === undefined) return air;
    if (air.temperature !== undefined) return { ...air, spray };
    return { ...air, spray: { coolant: 'water', flow: spray.flow, captureEfficiency: spray.captureEfficiency! } };
  });
}

/** The same with other cooling air. */
export function withAir(
  installation: Installation,
  air: (air: Omit<AirCooling, 'by'>) => Omit<AirCooling, 'by'>,
): Installation {
  const { cooling } = installation;
  const next: Installation['cooling'] =
    cooling.by === 'air' ? { by: 'air', ...air(cooling) } : { ...cooling, air: air(cooling.air) };
  return { ...installation, cooling: next };
}

function randomBoost(
  control: (typeof CONTROLS)[number],
  { between, spread }: Record<'between' | 'spread', (low: number, high: number) => number>,
  { usualFlow, sweptVolume, barometer }: { usualFlow: number; sweptVolume: number; barometer: number },
): BoostControl {
  const flow = Math.min(5, usualFlow);
  switch (control) {
    case 'spring at outlet':
    case 'spring at manifold':
      return {
        by: 'spring',
        senses: control === 'spring at outlet' ? 'compressor outlet' : 'manifold',
        gaugePressure: gaugePressure(between(20, 200), 'kPa'),
      };
    case 'drooping spring':
      return {
        by: 'spring',
        senses: between(0, 1) < 0.5 ? 'compressor outlet' : 'manifold',
        gaugePressure: gaugePressure(between(40, 150), 'kPa'),
        droop: {
          perPercentAir: pressureDifference(between(-300, 600), 'Pa'),
          atFlow: massFlow(flow * spread(0.7, 1.4), 'kg/s'),
        },
      };
    case 'closed loop, absolute':
      return { by: 'closed loop, absolute', manifoldPressure: absolutePressure(between(110, 300), 'kPa') };
    case 'closed loop, gauge':
      return { by: 'closed loop, gauge', manifoldPressure: gaugePressure(between(20, 200), 'kPa') };
    case 'fixed compressor speed':
      return {
        by: 'fixed compressor speed',
        flowAtPoint: massFlow(flow * (1e5 / barometer) * spread(0.7, 1.4), 'kg/s'),
        ratioAtPoint: ratio(between(1.3, 3)),
        fallPerFlow: massFlow(flow * spread(0.3, 10), 'kg/s'),
        atInletTemperature: temperature(298.15, 'K'),
        referenceTemperature: temperature(298.15, 'K'),
        referencePressure: absolutePressure(100, 'kPa'),
      };
    case 'displacement blower':
      return {
        by: 'displacement blower',
        volumePerRevolution: volume(sweptVolume * between(0.5, 0.9), 'm³'),
        driveRatio: ratio(between(1.3, 2.2)),
        volumetricEfficiencyUnloaded: ratio(between(0.85, 1)),
        slip: ratio(between(0.02, 0.2)),
      };
    case 'fixed wastegate':
      return {
        by: 'fixed wastegate',
        turbineArea: area(flow * spread(25, 60), 'cm²'),
        wastegateArea: area(flow * between(0, 25), 'cm²'),
        turbineEfficiency: ratio(between(0.5, 0.75)),
        exhaustTemperature: temperature(between(700, 950), '°C'),
        exhaustLoss: pressureDifference(between(0, 15), 'kPa'),
      };
    case 'held torque':
      return { by: 'held torque', torque: torque(sweptVolume * between(110e3, 220e3), 'N·m') };
  }
}
