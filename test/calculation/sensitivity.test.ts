import { describe, expect, it } from 'vitest';
import { measured, sensitivity, sensor, solve } from '../../src/calculation/index.js';
import {
  column,
  known,
  percent,
  ratio,
  rotationalSpeed,
  subtract,
  temperature,
  temperatureDifference,
  torque,
} from '../../src/units/index.js';
import { errorOf, kepler, messageOf, outlet, powerOf, relativeError } from './small-calculations.js';

describe('sensitivity', () => {
  const force = torque(400, 'N·m');
  const speed = known('engine speed', rotationalSpeed(5500, 'rpm'));
  const shaft = powerOf({ torque: force, speed }).named('shaft power');

  it('is 1 % of a product per 1 % of either factor, and unlabelled inputs go by their argument', () => {
    const { effects } = sensitivity(shaft);
    expect(effects.map(({ label, per }) => `${label}, ${per}`).sort()).toEqual(['engine speed, 1 %', 'torque, 1 %']);
    for (const { effect } of effects) expect(relativeError(effect, 0.01 * shaft.si)).toBeLessThan(1e-9);
    expect(effects.map(({ input }) => input)).toContain(force);
  });

  it('moves a temperature by one degree, in the size of its scale, and counts assumed values', () => {
    const at = (inlet: typeof room): ReturnType<typeof sensitivity> =>
      sensitivity(outlet({ inletTemperature: inlet, pressureRatio: ratio(1.6), efficiency: percent(72) }).to('K'));
    const room = temperature(20, '°C');
    const slope = 1 + (1.6 ** (0.4 / 1.4) - 1) / 0.72;
    const find = (effects: readonly { label: string }[], label: string) => effects.find((each) => each.label === label);
    expect(find(at(room).effects, 'inlet temperature')).toMatchObject({
      per: '1 K',
      effect: { si: expect.closeTo(slope, 8) },
    });
    expect(find(at(temperature(68, '°F')).effects, 'inlet temperature')).toMatchObject({
      per: '1 °F',
      effect: { si: expect.closeTo(slope / 1.8, 8) },
    });
    expect(at(room).effects.map(({ label }) => label)).toContain('heat-capacity ratio');
  });

  it('sorts by what the result moves', () => {
    const { effects } = sensitivity(
      outlet({ inletTemperature: temperature(20, '°C'), pressureRatio: ratio(1.6), efficiency: percent(72) }),
    );
    const sizes = effects.map(({ effect }) => Math.abs(effect.si));
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    expect(effects.find(({ label }) => label === 'efficiency')!.effect.si).toBeLessThan(0);
  });

  it('takes the inputs it is given, values on the way too, and leaves errors of sensors out unless asked', () => {
    const probe = sensor('temperature', { label: 'probe', halfWidth: temperatureDifference(1, 'K') });
    const inlet = probe.reads(temperature(20, '°C'));
    const hot = outlet({ inletTemperature: inlet, pressureRatio: ratio(1.6), efficiency: percent(72) });
    expect(sensitivity(hot).effects.map(({ label }) => label)).not.toContain('probe');
    expect(sensitivity(hot, [probe.correction!]).effects).toMatchObject([{ label: 'probe', per: '1 K' }]);
    expect(sensitivity(subtract(hot, inlet), [hot]).effects).toMatchObject([{ slope: 1 }]);
    expect(errorOf(() => sensitivity(hot, [temperature(20, '°C')])).problems[0]).toMatchObject({
      code: 'unknown',
      input: 'inputs[0]',
    });
  });

  it('goes through an equation that was solved', () => {
    const eccentricity = known('e', ratio(0.3));
    const { solution } = solve({ label: 'E', kind: 'ratio', unit: '1', between: [ratio(0), ratio(7)] }, (anomaly) => ({
      residual: kepler({ anomaly, eccentricity, mean: ratio(1) }),
    }));
    const { effects } = sensitivity(solution);
    expect(effects.map(({ label }) => label)).toEqual(['mean', 'e']);
    expect(relativeError(effects[1]!.slope, 1.04800830504993628589696325216)).toBeLessThan(1e-8);
  });

  it('has a text, a Markdown, an HTML and a JSON form', () => {
    const lines = String(sensitivity(shaft)).split('\n');
    // Both move the result alike, so their order is left to rounding.
    expect([...lines.slice(0, 3), ...lines.slice(3).sort().reverse()]).toEqual([
      'shaft power 230.4 kW: what moves it',
      '',
      'input            value  moved by  moves the result by              slope',
      'torque         400 N·m       1 %              2.30 kW   0.576 kW per N·m',
      'engine speed  5500 rpm       1 %              2.30 kW  0.0419 kW per rpm',
    ]);
    const hostile = powerOf({ torque: known('<b>', force), speed });
    expect(sensitivity(hostile).toHtml()).toContain('&lt;b&gt;');
    expect(sensitivity(hostile).toMarkdown()).toContain('| &lt;b&gt; |');
    expect(JSON.parse(JSON.stringify(sensitivity(shaft)))).toMatchObject({
      value: { label: 'shaft power' },
      effects: [{ per: '1 %' }, {}],
    });
    expect(
      String(
        sensitivity(
          structuredClone(measured('P', torque(1, 'N·m'), { standardUncertainty: percent(1) })) as typeof force,
        ),
      ),
    ).toContain('P 1 N·m');
  });

  it('refuses a column', () => {
    expect(messageOf(() => sensitivity(column('power', [1], 'kW') as never))).toContain('Take one row of the column');
  });
});
