import { workOf } from '../../src/calculation/index.js';
import { describe, expect, it } from 'vitest';
import {
  massFlowFromStandardVolumeFlow,
  massFlowOfVolume,
  referenceDensity,
  referenceStates,
  standardVolumeFlowFromMassFlow,
  volumeFlowOfMass,
  type ReferenceState,
} from '../../src/air/index.js';
import { KINDS } from '../../src/units/internal.js';
import { density, massFlow, standardVolumeFlow, volumeFlow, type UnitOf } from '../../src/units/index.js';

/** Cubic metres per second of one unit of volume flow (exact). */
const VOLUME_FLOW: Readonly<Record<string, number>> = { 'Nm³/h': 1 / 3600, 'L/min': 0.001 / 60, scfm: 0.0004719474432 };
const units = Object.keys(KINDS['standard volume flow'].units) as UnitOf<'standard volume flow'>[];
const states: Readonly<Record<string, ReferenceState>> = referenceStates;

/** Densities in kg/m³ and lb/ft³, recomputed with 50 digits from the ASHRAE gas constant. */
const PUBLISHED: Readonly<Record<string, readonly [number, number]>> = {
  '0C': [1.29232, 0.080677],
  '15C': [1.225046, 0.076477],
  '60F': [1.222693, 0.07633],
  '20C': [1.204152, 0.075173],
  '68F': [1.200701, 0.074957],
  '70F': [1.199555, 0.074886],
  '20C,1bar': [1.188406, 0.07419],
};

describe('reference states', () => {
  it.each(Object.keys(referenceStates))('%s has the density that follows from it', (name) => {
    const found = referenceDensity(states[name]!);
    expect(found.si).toBeCloseTo(PUBLISHED[name]![0], 6);
    expect(found.in('lb/ft³')).toBeCloseTo(PUBLISHED[name]![1], 6);
    expect(workOf(states[name]!.source.id).length).toBeGreaterThan(0);
  });

  it('give the fan trade its 0.075 lb/ft³ and compressed air nearly the same, moist (common practice, no source)', () => {
    expect(referenceDensity(referenceStates['70F']).in('lb/ft³')).toBeCloseTo(0.075, 3);
    expect(referenceDensity(referenceStates['68F']).in('lb/ft³')).toBeCloseTo(0.075, 3);
  });

  it('differ by nearly 9 %, which is why the unit must name its own', () => {
    const most = referenceDensity(referenceStates['0C']).si;
    expect(most / referenceDensity(referenceStates['20C,1bar']).si).toBeCloseTo(1.0874, 4);
  });
});

describe('standard volume flow', () => {
  it.each(units)('%s is its volume times the density of the state in its brackets', (unit) => {
    const [, volume, state] = /^(.+)\((.+)\)$/.exec(unit)!;
    const mass = massFlowFromStandardVolumeFlow({ standardVolumeFlow: standardVolumeFlow(1000, unit) });
    expect(mass.si / (1000 * VOLUME_FLOW[volume!]! * referenceDensity(states[state!]!).si)).toBeCloseTo(1, 8);
  });

  it.each(units)('%s comes back from the mass flow', (unit) => {
    const mass = massFlowFromStandardVolumeFlow({ standardVolumeFlow: standardVolumeFlow(318, unit) });
    expect(standardVolumeFlowFromMassFlow({ massFlow: mass }).to(unit).in(unit)).toBeCloseTo(318, 11);
  });

  it('without its reference state is no unit', () => {
    // @ts-expect-error there is no single standard cubic foot
    expect(() => standardVolumeFlow(300, 'scfm')).toThrow('there is no single standard: write scfm(60F), scfm(68F)');
    // @ts-expect-error a standard volume is a mass, not a volume
    expect(() => volumeFlow(300, 'scfm')).toThrow('scfm is a standard volume flow');
  });
});

describe('mass flow of a volume flow', () => {
  it('is what the error for a volume flow in place of a mass flow points to', () => {
    // @ts-expect-error a volume flow has no mass until its density is known
    expect(() => volumeFlowOfMass({ massFlow: volumeFlow(340, 'cfm'), density: density(1.12, 'kg/m³') })).toThrow(
      'massFlowOfVolume({ volumeFlow, density })',
    );
    expect(massFlowOfVolume.spec.inputs.map(({ name }) => name)).toEqual(['volumeFlow', 'density']);
  });

  it('is that of a liquid too, as fuel flows and coolant pumps are rated', () => {
    const fuel = { volumeFlow: volumeFlow(550, 'cm³/min'), density: density(0.72, 'kg/L') };
    expect(massFlowOfVolume(fuel).in('g/s')).toBeCloseTo((550 / 60) * 0.72, 12);
    expect(massFlowOfVolume(fuel).notes).toEqual([]);
  });

  it('comes back as the volume flow', () => {
    const air = { density: density(1.12, 'kg/m³') };
    const mass = massFlowOfVolume({ volumeFlow: volumeFlow(340, 'cfm'), ...air });
    expect(volumeFlowOfMass({ massFlow: mass, ...air }).in('cfm')).toBeCloseTo(340, 11);
  });

  it('is nothing where nothing flows, and never negative', () => {
    const air = { density: density(1.12, 'kg/m³') };
    expect(massFlowOfVolume({ volumeFlow: volumeFlow(0, 'cfm'), ...air }).si).toBe(0);
    expect(() => volumeFlowOfMass({ massFlow: massFlow(-1, 'g/s'), ...air })).toThrow(
      'massFlow must be between 0 g/s and',
    );
  });
});
