import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain, measured, uncertainty, whatIf } from '../../src/calculation/index.js';
import {
  compressorMap,
  compressorMapReferences,
  specificWorkVariableHeat,
  outletTemperatureVariableHeat,
  type CompressorMapData,
} from '../../src/compressor/index.js';
import { heightAt, monotone } from '../../src/compressor/map/monotone.js';
import { column, massFlow, percent, ratio, rotationalSpeed } from '../../src/units/index.js';
import {
  chokeFlow,
  demoMap as generated,
  asText,
  surgeFlow,
  wheel,
} from '../../docs/examples/demo-map/make-demo-map.js';
import { demoMap, demoMapText } from './demo-map.js';

const map = demoMap();
const noting = demoMap({ extrapolation: 'note' });
const at = (grams: number, PR: number) => ({ correctedFlow: massFlow(grams, 'g/s'), pressureRatio: ratio(PR) });
const rpm = (thousands: number) => rotationalSpeed(thousands * 1000, 'rpm');

/** A random place of the map: a speed between two lines, and a flow between surge and choke. */
const place = fc.record({
  n: fc.double({ min: 70, max: 160, noNaN: true }),
  share: fc.double({ min: 0, max: 1, noNaN: true }),
});
const flowAt = ({ n, share }: { n: number; share: number }) => {
  const correctedSpeed = rpm(n);
  const [low, high] = [map.surgeFlowAtSpeed({ correctedSpeed }).si, map.chokeFlow({ correctedSpeed }).si];
  return { correctedSpeed, correctedFlow: massFlow(low + share * (high - low), 'kg/s') };
};

describe('monotone curves', () => {
  it('agree with PchipInterpolator of SciPy 1.17', () => {
    const curve = monotone([0, 1, 2.5, 3, 5, 5.5], [0, 0.4, 2, 2.1, 1.5, -1]);
    const expected = [
      [0.3, 0.07042352941176472],
      [1.7, 1.1798795189816957],
      [2.6, 2.0297511811023625],
      [4.2, 1.909365137614679],
      [5.3, 0.2746524770642212],
      [5.49, -0.9401271023853224],
    ] as const;
    for (const [x, y] of expected) expect(heightAt(curve, x)).toBeCloseTo(y, 13);
    const short = monotone([0, 1, 3], [1, 2, 2.2]);
    expect([0.2, 0.9, 2].map((x) => heightAt(short, x))).toEqual(
      [1.264, 1.9675, 2.15].map((y) => expect.closeTo(y, 13)),
    );
  });

  it('rise wherever the points rise', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 10, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })),
      { minLength: 3, maxLength: 9 },
    );
    fc.assert(
      fc.property(steps, (list) => {
        const x = list.map((_, i) => list.slice(0, i + 1).reduce((sum, [dx]) => sum + dx, 0));
        const y = list.map((_, i) => list.slice(0, i + 1).reduce((sum, [, dy]) => sum + dy, 0));
        const curve = monotone(x, y);
        let before = -Infinity;
        for (let i = 0; i <= 200; i++) {
          const height = heightAt(curve, x[0]! + ((x.at(-1)! - x[0]!) * i) / 200);
          expect(height).toBeGreaterThanOrEqual(before - 1e-12);
          before = height;
        }
      }),
    );
  });
});

describe('the demo map', () => {
  it('is what its script makes', () => {
    expect(asText(generated())).toBe(demoMapText);
  });

  it('is possible: work over the square of the tip speed falls along each line, as slip has it', () => {
    for (const { correctedSpeed, points } of map.speedLines) {
      const tip = Math.PI * 0.056 * correctedSpeed.si;
      const coefficients = points.map(({ pressureRatio, isentropicEfficiency }) => {
        const hot = outletTemperatureVariableHeat.kernel(298.15, pressureRatio.si, isentropicEfficiency.si, 0);
        return specificWorkVariableHeat.kernel(298.15, hot, 0) / tip ** 2;
      });
      coefficients.forEach((coefficient, i) => {
        expect(coefficient).toBeGreaterThan(0.5);
        expect(coefficient).toBeLessThan(0.8);
        if (i > 0) expect(coefficient).toBeLessThan(coefficients[i - 1]! + 0.003);
      });
    }
  });
});

describe('a compressor map', () => {
  it('passes through every point it was given', () => {
    for (const { correctedSpeed, points } of map.speedLines) {
      for (const { correctedFlow, pressureRatio, isentropicEfficiency } of points) {
        const point = { correctedFlow, pressureRatio };
        expect(map.isentropicEfficiency(point).si).toBeCloseTo(isentropicEfficiency.si, 7);
        expect(map.correctedSpeed(point).si / correctedSpeed.si).toBeCloseTo(1, 7);
        expect(map.pressureRatio({ correctedFlow, correctedSpeed }).si).toBeCloseTo(pressureRatio.si, 10);
      }
    }
  });

  it('finds the same place by flow and speed, by flow and pressure ratio, and by speed and pressure ratio', () => {
    fc.assert(
      fc.property(place, (where) => {
        const { correctedSpeed, correctedFlow } = flowAt(where);
        const pressureRatio = map.pressureRatio({ correctedFlow, correctedSpeed });
        const speed = map.correctedSpeed({ correctedFlow, pressureRatio });
        expect(Math.abs(speed.si / correctedSpeed.si - 1)).toBeLessThan(1e-6);
        const flow = map.correctedFlow({ correctedSpeed, pressureRatio });
        // Left of the top of a line two flows have one pressure ratio; the right one is meant.
        expect(flow.si).toBeGreaterThan(correctedFlow.si * (1 - 1e-6));
        expect(map.pressureRatio({ correctedFlow: flow, correctedSpeed }).si).toBeCloseTo(pressureRatio.si, 8);
      }),
    );
  });

  it('rises in pressure ratio with speed at any flow, and never passes the best efficiency given', () => {
    const best = Math.max(
      ...map.speedLines.flatMap(({ points }) => points.map((point) => point.isentropicEfficiency.si)),
    );
    fc.assert(
      fc.property(place, (where) => {
        fc.pre(where.n < 158);
        const { correctedSpeed, correctedFlow } = flowAt(where);
        const faster = rotationalSpeed(correctedSpeed.si * 1.01, '1/s');
        fc.pre(correctedFlow.si > map.surgeFlowAtSpeed({ correctedSpeed: faster }).si);
        const slow = map.pressureRatio({ correctedFlow, correctedSpeed });
        expect(map.pressureRatio({ correctedFlow, correctedSpeed: faster }).si).toBeGreaterThan(slow.si);
        expect(map.isentropicEfficiency({ correctedFlow, pressureRatio: slow }).si).toBeLessThanOrEqual(best + 1e-12);
      }),
    );
  });

  it('is within 0.4 points of efficiency and 0.3 % of speed between lines, by the wheel it was made from', () => {
    let [worstEfficiency, worstSpeed] = [0, 0];
    for (let n = 72; n < 160; n += 4) {
      for (let i = 1; i < 10; i++) {
        const flow = surgeFlow(n) + (i / 10) * (chokeFlow(n) - surgeFlow(n));
        const truth = wheel(n, flow);
        const point = at(flow * 1000, truth.ratio);
        worstEfficiency = Math.max(worstEfficiency, Math.abs(map.isentropicEfficiency(point).si - truth.efficiency));
        worstSpeed = Math.max(worstSpeed, Math.abs(map.correctedSpeed(point).in('rpm') / (n * 1000) - 1));
      }
    }
    expect(worstEfficiency).toBeLessThan(0.004);
    expect(worstSpeed).toBeLessThan(0.003);
  });

  it('knows the ends of each speed and of each pressure ratio', () => {
    const line = map.speedLines[3]!;
    const { correctedSpeed } = line;
    expect(map.surgeFlowAtSpeed({ correctedSpeed }).si).toBeCloseTo(line.points[0]!.correctedFlow.si, 12);
    expect(map.surgePressureRatio({ correctedSpeed }).si).toBeCloseTo(line.points[0]!.pressureRatio.si, 12);
    expect(map.chokeFlow({ correctedSpeed }).si).toBeCloseTo(line.points.at(-1)!.correctedFlow.si, 12);
    const { pressureRatio } = line.points[0]!;
    expect(map.surgeFlow({ pressureRatio }).si).toBeCloseTo(line.points[0]!.correctedFlow.si, 9);
    expect(map.lowestFlow({ pressureRatio }).si).toBeCloseTo(line.points[0]!.correctedFlow.si, 9);
    for (const PR of [1.2, 1.5, 2, 2.5, 2.8]) {
      const [low, high] = [map.lowestFlow({ pressureRatio: ratio(PR) }), map.highestFlow({ pressureRatio: ratio(PR) })];
      expect(low.si).toBeLessThan(high.si);
      for (const correctedFlow of [low, high])
        expect(map.isentropicEfficiency({ correctedFlow, pressureRatio: ratio(PR) }).si).toBeGreaterThan(0.5);
    }
    expect(() => map.lowestFlow({ pressureRatio: ratio(4) })).toThrow(
      /a pressure ratio that hill-climb compressor holds/,
    );
  });

  it.each([
    { side: 'right of where the speed lines of hill-climb compressor begin \\(surge\\)', point: at(60, 2.2) },
    { side: 'left of where the speed lines of hill-climb compressor end \\(choke\\)', point: at(255, 1.5) },
    { side: 'not below the lowest speed line of hill-climb compressor, 70000 rpm', point: at(80, 1.1) },
    { side: 'not above the highest speed line of hill-climb compressor, 160000 rpm', point: at(200, 3.2) },
  ])('refuses a point not $side', ({ side, point }) => {
    expect(() => map.isentropicEfficiency(point)).toThrow(new RegExp(`it needs a point ${side}, or a map made with`));
    expect(() => map.correctedSpeed(point)).toThrow(new RegExp(side));
  });

  it('goes on a little way where it is told to, with a note, and no further', () => {
    const beyond = at(254, 1.9);
    expect(() => map.isentropicEfficiency(beyond)).toThrow(/\(choke\)/);
    const efficiency = noting.isentropicEfficiency(beyond);
    expect(efficiency.si).toBeLessThan(0.52);
    expect(efficiency.notes).toMatchObject([
      { code: 'rule', message: expect.stringContaining('(choke); beyond, it is continued') },
    ]);
    expect(() => noting.isentropicEfficiency(at(400, 1.2))).toThrow(
      /a point that the map can be continued to: 35000 to 176000 rpm/,
    );
    expect(noting.isentropicEfficiency(at(200, 2.2)).notes).toEqual([]);
    expect(() => noting.isentropicEfficiency(beyond, { strict: true })).toThrow(/\(choke\)/);
  });

  it('goes down in speed by the fan laws: flow with speed, rise of pressure with its square', () => {
    const slow = noting.correctedSpeed(at(30, 1.09));
    expect(slow.notes.length).toBe(1);
    const scale = slow.in('rpm') / 70000;
    const onLine = { correctedFlow: massFlow(30 / scale, 'g/s'), correctedSpeed: rpm(70) };
    expect((noting.pressureRatio(onLine).si - 1) * scale ** 2).toBeCloseTo(0.09, 8);
  });

  it('gives answers with a history: what-if, uncertainty and the worked example go through it', () => {
    const flow = measured('flow', massFlow(200, 'g/s'), { standardUncertainty: massFlow(3, 'g/s') });
    const efficiency = map.isentropicEfficiency({ correctedFlow: flow, pressureRatio: ratio(2.2) });
    const slope = (map.isentropicEfficiency(at(200.5, 2.2)).si - map.isentropicEfficiency(at(199.5, 2.2)).si) / 1;
    expect(uncertainty(efficiency).standard.si).toBeCloseTo(Math.abs(slope) * 3, 5);
    expect(whatIf(efficiency, [[flow, massFlow(180, 'g/s')]]).si).toBe(map.isentropicEfficiency(at(180, 2.2)).si);
    expect(explain(efficiency).toText()).toContain('eta = mapEfficiency(mc, PR)');
  });

  it('runs over columns', () => {
    const flows = [150, 180, 210];
    const read = map.isentropicEfficiency.columns({
      correctedFlow: column('mass flow', flows, 'g/s'),
      pressureRatio: ratio(2.2),
    });
    expect(Array.from(read.si)).toEqual(flows.map((grams) => map.isentropicEfficiency(at(grams, 2.2)).si));
  });

  it('shows itself in a line', () => {
    expect(String(map)).toBe(
      'hill-climb compressor: 6 speed lines from 70000 rpm to 160000 rpm, 57 points, corrected to 298.15 K and 100 kPa',
    );
  });
});

describe('a surge line of its own', () => {
  const data: CompressorMapData = {
    ...map,
    surgeLine: [0, 2, 5].map((i) => {
      const { correctedFlow, pressureRatio } = map.speedLines[i]!.points[0]!;
      return { correctedFlow: massFlow(correctedFlow.si * 1.1, 'kg/s'), pressureRatio };
    }),
  };
  const lined = compressorMap(data);

  it('stands for the ends of the lines in margins, and warns of points left of it', () => {
    const pressureRatio = map.speedLines[2]!.points[0]!.pressureRatio;
    expect(lined.surgeFlow({ pressureRatio }).si).toBeCloseTo(map.surgeFlow({ pressureRatio }).si * 1.1, 9);
    const left = { correctedFlow: massFlow(map.surgeFlow({ pressureRatio }).si * 1.04, 'kg/s'), pressureRatio };
    expect(map.isentropicEfficiency(left).notes).toEqual([]);
    expect(lined.isentropicEfficiency(left).notes).toMatchObject([
      { message: expect.stringContaining('a flow right of the surge line') },
    ]);
  });

  it('is met by each speed line where flow and pressure ratio agree', () => {
    const correctedSpeed = rpm(120);
    const flow = lined.surgeFlowAtSpeed({ correctedSpeed });
    const pressureRatio = lined.surgePressureRatio({ correctedSpeed });
    expect(lined.pressureRatio({ correctedFlow: flow, correctedSpeed }).si).toBeCloseTo(pressureRatio.si, 9);
    expect(lined.surgeFlow({ pressureRatio }).si).toBeCloseTo(flow.si, 9);
    expect(flow.si).toBeGreaterThan(map.surgeFlowAtSpeed({ correctedSpeed }).si);
  });
});

describe('points that cannot be a map', () => {
  const line = (thousands: number, points: readonly (readonly [number, number, number])[]) => ({
    correctedSpeed: rpm(thousands),
    points: points.map(([flow, PR, eta]) => ({ ...at(flow, PR), isentropicEfficiency: percent(eta) })),
  });
  const low = [
    [50, 1.3, 65],
    [80, 1.28, 72],
    [110, 1.2, 60],
  ] as const;
  const high = [
    [80, 1.7, 66],
    [120, 1.65, 74],
    [160, 1.5, 60],
  ] as const;
  const reference = compressorMapReferences.saeJ1826;
  const made =
    (...speedLines: CompressorMapData['speedLines']) =>
    () =>
      compressorMap({ name: 'drawn', reference, speedLines });

  it('may come in any order', () => {
    const sorted = compressorMap({ reference, speedLines: [line(80, low), line(110, high)] });
    const mixed = compressorMap({ reference, speedLines: [line(110, high.toReversed()), line(80, low)] });
    expect(JSON.stringify(mixed)).toBe(JSON.stringify(sorted));
    expect(mixed.name).toBe('compressor map');
  });

  it('are told one by one, with the line and the point', () => {
    const bare = { correctedFlow: 80, pressureRatio: ratio(1.7), isentropicEfficiency: percent(66) };
    const withPoints = (points: unknown): CompressorMapData['speedLines'] =>
      [line(80, low), { correctedSpeed: rpm(110), points }] as CompressorMapData['speedLines'];
    expect(made(...withPoints([bare]))).toThrow(/speedLines\[1\]\.points must be a list of 3 to 500 entries, got 1/);
    expect(made(...withPoints([bare, bare, bare]))).toThrow(
      /speedLines\[1\]\.points\[2\]\.correctedFlow must be a mass flow, got the bare number 80/,
    );
    expect(made(...withPoints(undefined))).toThrow(/speedLines\[1\]\.points must be a list, got nothing/);
    // @ts-expect-error neither is a reference state
    expect(() => compressorMap({ speedLines: [line(80, low), line(110, high)] })).toThrow(
      /reference must be \{ referenceTemperature, referencePressure \}, got nothing/,
    );
    expect(
      made(
        line(80, low),
        line(110, [
          [80, 1.7, 66],
          [120, 0.9, 74],
          [160, 1.5, 6000],
        ]),
      ),
    ).toThrow(
      /speedLines\[1\]\.points\[1\]\.pressureRatio must be between 1 and 12, got 0\.9[\s\S]*points\[2\]\.isentropicEfficiency must be between 5 % and 100 %/,
    );
    expect(made(line(80, low))).toThrow(/speedLines must be a list of 2 to 100 entries, got 1/);
  });

  it('cannot share a flow, rise again, or never fall', () => {
    expect(made(line(80, [...low, [110, 1.15, 50]]), line(110, high))).toThrow(
      /the speed line of 80000 rpm must be points of different flow, got 110 g\/s at 1\.2 and 110 g\/s at 1\.15\. Where a line stands upright/,
    );
    expect(made(line(80, [...low, [120, 1.25, 50]]), line(110, high))).toThrow(
      /falling in pressure ratio once it has fallen/,
    );
    expect(
      made(
        line(
          80,
          low.map(([flow], i) => [flow, 1.2 + i * 0.01, 60] as const),
        ),
        line(110, high),
      ),
    ).toThrow(/towards choke/);
  });

  it('cannot lie on lines that stand in the wrong order, twice, or across each other', () => {
    expect(made(line(110, low), line(80, high))).toThrow(
      /the speed line of 110000 rpm must be beyond the speed line of 80000 rpm in flow and pressure ratio at its surge end/,
    );
    expect(made(line(80, low), line(80, low), line(110, high))).toThrow(
      /the speed line of 80000 rpm must be given once, got it twice/,
    );
    const sagging = [
      [52, 1.32, 65],
      [60, 1.1, 70],
      [160, 1.09, 60],
    ] as const;
    const flat = [
      [50, 1.3, 65],
      [100, 1.29, 72],
      [110, 1.05, 60],
    ] as const;
    expect(made(line(80, flat), line(110, sagging))).toThrow(
      /lines that keep apart, got the speed line of 80000 rpm and the speed line of 110000 rpm crossing or touching near/,
    );
  });

  it('can have a top: the line may rise from surge first', () => {
    const humped = compressorMap({
      reference,
      speedLines: [line(80, [[40, 1.285, 60], ...low]), line(110, [[70, 1.68, 60], ...high])],
    });
    const correctedSpeed = rpm(95);
    const top = humped.pressureRatio({ correctedSpeed, correctedFlow: massFlow(66, 'g/s') });
    const flow = humped.correctedFlow({ correctedSpeed, pressureRatio: ratio(top.si - 0.01) });
    expect(flow.in('g/s')).toBeGreaterThan(66);
    expect(() => humped.correctedFlow({ correctedSpeed, pressureRatio: ratio(1.6) })).toThrow(/\(surge\)/);
  });
});
