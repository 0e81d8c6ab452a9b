import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compressorMapReferences,
  correctedFlow,
  correctedFlowAtReference,
  correctedSpeed,
  correctedSpeedAtReference,
  massFlowFromCorrectedFlow,
  speedFromCorrectedSpeed,
} from '../../src/compressor/index.js';
import { absolutePressure, massFlow, rotationalSpeed, temperature } from '../../src/units/index.js';

const room = { inletTemperature: temperature(18, '°C'), inletPressure: absolutePressure(941, 'hPa') };
const references = Object.entries(compressorMapReferences).map(([name, reference]) => ({ name, reference }));

describe('reference states of compressor maps', () => {
  it.each(references)('say where $name comes from', ({ reference }) => {
    for (const quantity of Object.values(reference)) {
      expect(quantity.label).toMatch(/reference|standard/);
      expect(quantity.origin).toMatchObject({ type: 'leaf', role: 'assumed', source: { where: expect.any(String) } });
    }
  });

  it('mark the customs of the trade as such (common practice, no source)', () => {
    const { poundsPerMinute, poundsPerMinuteRounded } = compressorMapReferences;
    for (const { referenceTemperature, referencePressure } of [poundsPerMinute, poundsPerMinuteRounded]) {
      for (const { origin } of [referenceTemperature, referencePressure]) {
        expect(origin).toMatchObject({ source: { status: 'common practice' } });
      }
    }
    expect(poundsPerMinute.referenceTemperature.in('°F')).toBeCloseTo(85.33, 10);
    expect(poundsPerMinute.referencePressure.in('inHg')).toBeCloseTo(28.4, 2);
  });

  it('differ by 8 % in flow between the standard atmosphere and the custom in lb/min', () => {
    const flow = massFlow(200, 'g/s');
    const high = correctedFlow({ massFlow: flow, ...room, ...compressorMapReferences.aerospace });
    const low = correctedFlow({ massFlow: flow, ...room, ...compressorMapReferences.poundsPerMinute });
    expect(high.si / low.si).toBeCloseTo(1.0799, 4);
  });
});

describe('corrected flow', () => {
  it.each(references)('is the flow itself at the reference state of $name', ({ reference }) => {
    const { referenceTemperature, referencePressure } = reference;
    const flow = correctedFlow({
      massFlow: massFlow(0.25, 'kg/s'),
      inletTemperature: referenceTemperature,
      inletPressure: referencePressure,
      ...reference,
    });
    expect(flow.si).toBe(0.25);
  });

  it('goes back to the flow it came from, and lands on the same flow by way of another map', () => {
    const index = fc.nat({ max: references.length - 1 });
    const inlet = fc.record({
      flow: fc.double({ min: 1e-3, max: 2, noNaN: true }),
      T: fc.double({ min: 240, max: 340, noNaN: true }),
      p: fc.double({ min: 5e4, max: 1.1e5, noNaN: true }),
    });
    fc.assert(
      fc.property(index, index, inlet, (one, other, { flow, T, p }) => {
        const first = references[one]!.reference;
        const second = references[other]!.reference;
        const at = { inletTemperature: temperature(T, 'K'), inletPressure: absolutePressure(p, 'Pa') };
        const corrected = correctedFlow({ massFlow: massFlow(flow, 'kg/s'), ...at, ...first });
        const back = massFlowFromCorrectedFlow({ correctedFlow: corrected, ...at, ...first });
        const moved = correctedFlowAtReference({
          correctedFlow: corrected,
          ...first,
          newReferenceTemperature: second.referenceTemperature,
          newReferencePressure: second.referencePressure,
        });
        const direct = correctedFlow({ massFlow: massFlow(flow, 'kg/s'), ...at, ...second });
        expect(Math.abs(back.si / flow - 1)).toBeLessThan(1e-14);
        expect(Math.abs(moved.si / direct.si - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it('assumes no reference state', () => {
    // @ts-expect-error the reference state of the map is missing
    expect(() => correctedFlow({ massFlow: massFlow(0.2, 'kg/s'), ...room })).toThrow(
      /referenceTemperature must be a temperature, got nothing/,
    );
  });

  it('refuses a barometer in the place of a map reference, far off any map', () => {
    const wrong = { ...compressorMapReferences.saeJ1826, referencePressure: absolutePressure(100, 'Pa') };
    expect(() => correctedFlow({ massFlow: massFlow(0.2, 'kg/s'), ...room, ...wrong })).toThrow(
      /referencePressure must be between 80 kPa and 110 kPa|referencePressure must be between 80000 Pa and 110000 Pa/,
    );
  });
});

describe('corrected speed', () => {
  const { saeJ1826, aerospace } = compressorMapReferences;

  it('goes back to the speed it came from, and lands on the same speed by way of another map', () => {
    const speeds = fc.double({ min: 100, max: 5000, noNaN: true });
    fc.assert(
      fc.property(speeds, fc.double({ min: 240, max: 340, noNaN: true }), (n, T) => {
        const inletTemperature = temperature(T, 'K');
        const speed = rotationalSpeed(n, '1/s');
        const { referenceTemperature } = saeJ1826;
        const corrected = correctedSpeed({ speed, inletTemperature, referenceTemperature });
        const back = speedFromCorrectedSpeed({ correctedSpeed: corrected, inletTemperature, referenceTemperature });
        const moved = correctedSpeedAtReference({
          correctedSpeed: corrected,
          referenceTemperature,
          newReferenceTemperature: aerospace.referenceTemperature,
        });
        const direct = correctedSpeed({
          speed,
          inletTemperature,
          referenceTemperature: aerospace.referenceTemperature,
        });
        expect(Math.abs(back.si / n - 1)).toBeLessThan(1e-14);
        expect(Math.abs(moved.si / direct.si - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it('is higher than the speed in a room colder than the map', () => {
    const speed = rotationalSpeed(120000, 'rpm');
    const { inletTemperature } = room;
    const corrected = correctedSpeed({ speed, inletTemperature, referenceTemperature: saeJ1826.referenceTemperature });
    expect(corrected.in('rpm')).toBeCloseTo(121434, 0);
  });

  it('takes no pressure, and says so', () => {
    const given = { speed: rotationalSpeed(120000, 'rpm'), inletTemperature: room.inletTemperature, ...saeJ1826 };
    expect(() => correctedSpeed(given)).toThrow(/referencePressure must be one of speed, inletTemperature/);
  });
});
