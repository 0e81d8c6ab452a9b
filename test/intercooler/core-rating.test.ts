import { inspect } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uncertainty, whatIf } from '../../src/calculation/index.js';
import {
  coreRating,
  foulingFactorOfCompressedAir,
  type CoreGeometry,
  type FlowsThroughCore,
  type RatedCore,
} from '../../src/intercooler/index.js';
import {
  CalculationError,
  density,
  dynamicViscosity,
  length,
  massFlow,
  ratio,
  specificHeatCapacity,
  temperature,
  thermalConductivity,
} from '../../src/units/index.js';
import { benchCore, benchFlows } from './bench-core.js';

const { charge, coolant } = benchFlows;
const rated = coreRating(benchCore, benchFlows);

const withCoolant = (change: Partial<FlowsThroughCore['coolant']>): FlowsThroughCore => ({
  charge,
  coolant: { ...coolant, ...change } as FlowsThroughCore['coolant'],
});
const withCharge = (change: Partial<FlowsThroughCore['charge']>): FlowsThroughCore => ({
  charge: { ...charge, ...change },
  coolant,
});

const water: FlowsThroughCore['coolant'] = {
  massFlow: massFlow(0.4, 'kg/s'),
  inletTemperature: temperature(30, '°C'),
  liquid: {
    density: density(1020, 'kg/m³'),
    viscosity: dynamicViscosity(1, 'mPa·s'),
    conductivity: thermalConductivity(0.45, 'W/(m·K)'),
    specificHeatCapacity: specificHeatCapacity(3.7, 'kJ/(kg·K)'),
  },
};
const strips = benchCore.charge.fins;
const waterCore: CoreGeometry = {
  name: 'the water core',
  arrangement: 'counterflow',
  passageWidth: length(100, 'mm'),
  charge: { passages: ratio(15), flowLength: length(250, 'mm'), fins: strips },
  coolant: {
    passages: ratio(16),
    flowLength: length(250, 'mm'),
    fins: { ...strips, plateSpacing: length(2.5, 'mm'), type: 'offset strip', stripLength: length(6, 'mm') },
  },
  plateThickness: length(0.5, 'mm'),
  metalConductivity: thermalConductivity(180, 'W/(m·K)'),
};

describe('the rating of a core from its sizes', () => {
  // The same core from the textbook forms written out apart, mpmath, 30 digits: heat capacity of air from the NASA polynomials,
  // Sutherland's viscosity, effectiveness in the Bessel form of Baclic 1978, Kays and London equation 2-26a.
  it.each([
    ['chargeOutlet', 304.50504002519],
    ['coolantOutlet', 318.12543517325],
    ['heat', 14911.52001159],
    ['conductance', 487.46248241643],
    ['transferUnits', 2.9305231587039],
    ['capacityRatio', 0.30091413037424],
    ['effectiveness', 0.87033941723115],
    ['chargePressureLoss', 1466.7772165404],
    ['coolantPressureLoss', 410.08099614246],
  ] as const)('%s agrees with an independent computation', (name, value) => {
    expect(Math.abs(rated[name].si / value - 1)).toBeLessThan(1e-11);
  });

  it('closes its balances: heat given, heat taken, and the effectiveness of the two inlets', () => {
    const span = charge.inletTemperature.si - coolant.inletTemperature.si;
    const given = rated.charge.capacityRate.si * (charge.inletTemperature.si - rated.chargeOutlet.si);
    const taken = rated.coolant.capacityRate.si * (rated.coolantOutlet.si - coolant.inletTemperature.si);
    const least = Math.min(rated.charge.capacityRate.si, rated.coolant.capacityRate.si);
    for (const heat of [given, taken, rated.effectiveness.si * least * span])
      expect(Math.abs(heat / rated.heat.si - 1)).toBeLessThan(1e-9);
    expect(charge.inletPressure.si - rated.chargePressureLoss.si).toBeCloseTo(rated.chargeOutletPressure.si, 6);
  });

  it('takes properties at the mean of what it finds', () => {
    expect(rated.charge.meanTemperature.si).toBeCloseTo((charge.inletTemperature.si + rated.chargeOutlet.si) / 2, 9);
    expect(rated.coolant.meanTemperature.si).toBeCloseTo((coolant.inletTemperature.si + rated.coolantOutlet.si) / 2, 6);
  });

  it('cools more with more cooling air or denser fins, and loses more pressure with them and with more charge', () => {
    const fanned = coreRating(benchCore, withCoolant({ massFlow: massFlow(0.9, 'kg/s') }));
    expect(fanned.chargeOutlet.si).toBeLessThan(rated.chargeOutlet.si);
    expect(fanned.coolantPressureLoss.si).toBeGreaterThan(rated.coolantPressureLoss.si);
    const denser = { ...benchCore.charge, fins: { ...strips, pitch: length(1.8, 'mm') } };
    const denserCore = coreRating({ ...benchCore, charge: denser }, benchFlows);
    expect(denserCore.effectiveness.si).toBeGreaterThan(rated.effectiveness.si);
    expect(denserCore.chargePressureLoss.si).toBeGreaterThan(rated.chargePressureLoss.si);
    const flooded = coreRating(benchCore, withCharge({ massFlow: massFlow(250, 'g/s') }));
    expect(flooded.airSideEffectiveness.si).toBeLessThan(rated.airSideEffectiveness.si);
    const exponent = Math.log(flooded.chargePressureLoss.si / rated.chargePressureLoss.si) / Math.log(250 / 165);
    expect(exponent).toBeGreaterThan(1.5);
    expect(exponent).toBeLessThan(2);
  });

  it('is dirtier with fouling', () => {
    const foulingFactor = foulingFactorOfCompressedAir;
    const dirty = { ...benchCore, charge: { ...benchCore.charge, foulingFactor } };
    const both = { ...dirty, coolant: { ...benchCore.coolant, foulingFactor } };
    const conductances = [benchCore, dirty, both].map((core) => coreRating(core, benchFlows).conductance.si);
    expect(conductances).toEqual(conductances.toSorted((a, b) => b - a));
    expect(new Set(conductances).size).toBe(3);
  });

  it('ranks arrangements as their relations do', () => {
    const at = (
      arrangement: 'crossflowUnmixed' | 'crossflowChargeMixed' | 'crossflowCoolantMixed' | 'crossflowBothMixed',
    ) => coreRating({ ...benchCore, arrangement, passageWidth: undefined }, benchFlows).airSideEffectiveness.si;
    const [unmixed, one, other, both] = [
      at('crossflowUnmixed'),
      at('crossflowChargeMixed'),
      at('crossflowCoolantMixed'),
      at('crossflowBothMixed'),
    ];
    // The charge has the smaller capacity rate: mixing it costs less than mixing the other.
    expect(unmixed).toBeGreaterThan(one);
    expect(one).toBeGreaterThan(other);
    expect(other).toBeGreaterThan(both);
  });

  it('rates a water core in counterflow and parallel flow', () => {
    const flows = { charge, coolant: water };
    const counter = coreRating(waterCore, flows);
    const parallel = coreRating({ ...waterCore, arrangement: 'parallelFlow', passageWidth: length(100, 'mm') }, flows);
    expect(counter.effectiveness.si).toBeGreaterThan(parallel.effectiveness.si);
    expect(counter.coolantOutlet.in('°C')).toBeGreaterThan(30);
    expect(counter.coolantOutlet.in('°C')).toBeLessThan(45);
    expect(counter.coolant.capacityRate.si).toBeCloseTo(1480, 9);
    expect(counter.coolantPressureLoss.si).toBeGreaterThan(0);
  });
});

describe('what a rating knows of itself', () => {
  it('carries the scatter of both correlations into the uncertainty, each side its own', () => {
    const labels = uncertainty(rated.effectiveness).contributions.map(({ label }) => label);
    expect(labels).toContain('scatter of offset-strip heat transfer, charge side');
    expect(labels).toContain('scatter of louvred-fin heat transfer, coolant side');
    const { standard } = uncertainty(rated.chargePressureLoss);
    expect(standard.si / rated.chargePressureLoss.si).toBeGreaterThan(0.08);
    expect(standard.si / rated.chargePressureLoss.si).toBeLessThan(0.15);
  });

  it('gives way to scatter factors from a measurement', () => {
    const known = {
      ...benchCore,
      charge: {
        ...benchCore.charge,
        heatTransferScatter: ratio(0.93),
        frictionScatter: ratio(1.1),
        entranceCoefficient: ratio(0.4),
        exitCoefficient: ratio(0.2),
      },
    };
    const result = coreRating(known, benchFlows);
    expect(result.charge.colburnFactor.si / rated.charge.colburnFactor.si).toBeCloseTo(0.93, 3);
    const labels = uncertainty(result.chargePressureLoss).contributions.map(({ label }) => label);
    expect(labels.some((label) => label.startsWith('scatter of offset-strip'))).toBe(false);
  });

  it('answers what-if as if it had been asked anew', () => {
    const warmer = temperature(35, '°C');
    const [answer] = [whatIf(rated.chargeOutlet, [[coolant.inletTemperature, warmer]])];
    const anew = coreRating(benchCore, withCoolant({ inletTemperature: warmer })).chargeOutlet;
    expect(Math.abs(answer.si - anew.si)).toBeLessThan(1e-8);
  });

  it('passes on that louvred friction is experimental, and that the charge is warmed where it is', () => {
    expect(rated.coolantPressureLoss.notes).toMatchObject([{ code: 'experimental' }]);
    expect(rated.chargeOutlet.notes).toEqual([]);
    const soaked = coreRating(benchCore, withCoolant({ inletTemperature: temperature(150, '°C') }));
    expect(soaked.chargeOutlet.in('°C')).toBeGreaterThan(121);
    expect(soaked.heat.si).toBeLessThan(0);
    expect(soaked.chargeOutlet.notes.length + soaked.heat.notes.length).toBeGreaterThan(0);
  });

  it('has words and records', () => {
    expect(String(rated)).toMatch(/^the bench core: charge out 31\.4 °C, coolant out 45\.0 °C, heat 14\.91 kW/);
    expect(inspect(rated)).toBe(String(rated));
    expect(rated.toJSON()['effectiveness']).toMatchObject({ kind: 'ratio', unit: '%' });
  });

  it('takes a core that crossed to a worker as plain data', () => {
    const copy = coreRating(structuredClone(benchCore), structuredClone(benchFlows));
    expect(copy.chargeOutlet.si).toBe(rated.chargeOutlet.si);
  });
});

describe('a rating that cannot be', () => {
  it('refuses flows that enter equally warm', () => {
    expect(() => coreRating(benchCore, withCoolant({ inletTemperature: charge.inletTemperature }))).toThrow(
      /rating of the bench core: inletTemperature must be different for charge and coolant, got 121/,
    );
  });

  it('refuses a choked core, with what to do', () => {
    const storm = withCharge({ massFlow: massFlow(3, 'kg/s') });
    expect(() => coreRating(benchCore, storm)).toThrow(/keeps at least 30 % of its inlet pressure.*Less flow/);
  });

  it('refuses passages of two lengths side by side', () => {
    const crooked = { ...waterCore, coolant: { ...waterCore.coolant, flowLength: length(200, 'mm') } };
    expect(() => coreRating(crooked, { charge, coolant: water })).toThrow(
      /flowLength must be the same for charge and coolant in counterflow, got 250 mm and 200 mm/,
    );
  });

  it('refuses fins thicker than their pitch', () => {
    const solid = { ...benchCore.charge, fins: { ...strips, pitch: length(0.1, 'mm') } };
    expect(() => coreRating({ ...benchCore, charge: solid }, benchFlows)).toThrow(/finSpacing/);
  });
});

describe('any core', () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const cores = fc.record({
    pitch: between(1, 4),
    plates: between(3, 12),
    passages: fc.integer({ min: 4, max: 60 }),
    length: between(100, 900),
    depth: between(20, 150),
    chargeFlow: between(10, 600),
    coolantFlow: between(0.01, 3),
    hot: between(30, 250),
    cold: between(-40, 60),
  });

  it('is rated to finite numbers within what is possible, or refused with words', () => {
    let answered = 0;
    fc.assert(
      fc.property(cores, (of) => {
        const core: CoreGeometry = {
          ...benchCore,
          charge: {
            ...benchCore.charge,
            passages: ratio(of.passages),
            flowLength: length(of.length, 'mm'),
            fins: { ...strips, pitch: length(of.pitch, 'mm'), plateSpacing: length(of.plates, 'mm') },
          },
          coolant: { ...benchCore.coolant, passages: ratio(of.passages + 1), flowLength: length(of.depth, 'mm') },
        };
        const flows: FlowsThroughCore = {
          charge: { ...charge, massFlow: massFlow(of.chargeFlow, 'g/s'), inletTemperature: temperature(of.hot, '°C') },
          coolant: {
            ...coolant,
            massFlow: massFlow(of.coolantFlow, 'kg/s'),
            inletTemperature: temperature(of.cold, '°C'),
          } as FlowsThroughCore['coolant'],
        };
        const result = ratedOrRefused(core, flows);
        if (result === undefined) return;
        answered++;
        expect(result.effectiveness.si).toBeGreaterThan(0);
        expect(result.effectiveness.si).toBeLessThanOrEqual(1);
        const [low, high] = [Math.min(of.hot, of.cold) - 1e-6, Math.max(of.hot, of.cold) + 1e-6];
        for (const outlet of [result.chargeOutlet.in('°C'), result.coolantOutlet.in('°C')]) {
          expect(outlet).toBeGreaterThanOrEqual(low);
          expect(outlet).toBeLessThanOrEqual(high);
        }
        expect(Number.isFinite(result.chargePressureLoss.si + result.coolantPressureLoss.si)).toBe(true);
      }),
      { seed: 5, numRuns: 300 },
    );
    expect(answered).toBeGreaterThan(200);
  });

  function ratedOrRefused(core: CoreGeometry, flows: FlowsThroughCore): RatedCore | undefined {
    try {
      return coreRating(core, flows);
    } catch (error) {
      if (error instanceof CalculationError) return undefined;
      throw error;
    }
  }
});
