import { inspect } from 'node:util';
import { describe, expect, it } from 'vitest';
import { CalculationError, explain, mean, meanOfRepeats, sensor, solve } from '../../src/calculation/index.js';
import { outletTemperature } from '../../src/compressor/index.js';
import { cooledTemperature } from '../../src/intercooler/index.js';
import { correctionFactorSaeJ1349 } from '../../src/correction/index.js';
import { frictionCoefficients, frictionMeanEffectivePressure, powerFromTorque } from '../../src/engine/index.js';
import {
  absolute,
  absolutePressure,
  column,
  gaugePressure,
  known,
  percent,
  power,
  ratio,
  ratioOf,
  rotationalSpeed,
  speed,
  subtract,
  temperature,
  temperatureDifference,
  torque,
  usShop,
} from '../../src/units/index.js';

const room = known('room air', temperature(18, '°C'));
const barometer = known('barometer', absolutePressure(94, 'kPa'));
const manifold = absolute(known('boost', gaugePressure(110, 'kPa')), barometer);
const hot = outletTemperature({
  inletTemperature: room,
  pressureRatio: ratioOf(manifold, barometer),
  isentropicEfficiency: known('compressor efficiency', percent(70)),
});

describe('a worked example', () => {
  it('lists what was given and assumed, each step once with its numbers, and the source', () => {
    const text = explain(hot).toText();
    expect(text).toContain(
      'Given: room air = 18 °C; boost = 110 kPa gauge; barometer = 94 kPa absolute; compressor efficiency = 70 %',
    );
    expect(text).toContain('Assumed: heat-capacity ratio of air = 1.4');
    expect(text).toContain('p = pg + pb\n     = 110 kPa + 94 kPa\n     = 204.0 kPa');
    expect(text).toContain('= 204.0 kPa / (94 kPa)\n     = 2.170');
    expect(text).toContain('= 291.15 K * (1 + (2.170^((1.4 - 1) / 1.4) - 1) / 0.7)');
    expect(text).toContain('= 394.22 K = 121.1 °C');
    expect(text).toContain('from memory]');
    expect(text.match(/absolute pressure\n/g)).toHaveLength(1);
    expect(inspect(explain(hot))).toBe(text);
  });

  it('says of every assumed value where it comes from and how far that was checked, in every format', () => {
    const friction = frictionMeanEffectivePressure({
      ...frictionCoefficients.chenFlynn,
      peakCylinderPressure: absolutePressure(80, 'bar'),
      meanPistonSpeed: speed(12, 'm/s'),
    });
    const work = 'Development of a single cylinder compression ignition research engine, SAE 650733 (1965)';
    const words = `${work}, coefficients, single-cylinder diesel, from memory]`;
    const factor = correctionFactorSaeJ1349({
      dryPressure: absolutePressure(95.9, 'kPa'),
      inletTemperature: temperature(30, '°C'),
    });
    for (const [result, source] of [
      [friction, words],
      [factor, 'default where friction power is unknown, from memory]'],
    ] as const) {
      const explanation = explain(result);
      const { assumed } = explanation.model;
      expect(assumed.length).toBeGreaterThan(0);
      for (const value of assumed) expect(value.source?.status, value.name).toBeDefined();
      const assumedIn = explanation
        .toText()
        .split('\n')
        .find((line) => line.startsWith('Assumed: '))!;
      expect(assumedIn.split(source)).toHaveLength(
        1 + assumed.filter((value) => value.source?.status === 'memory').length,
      );
      expect(explanation.toHtml()).toContain(source);
      expect(explanation.toLatex()).toContain(source.replaceAll('&', '\\&'));
      expect(explanation.toMarkdown().replaceAll('\\', '')).toContain(source);
      expect(JSON.stringify(explanation)).toContain('"status":"memory"');
    }
  });

  it('keeps the points of sections where numbers take a comma', () => {
    const text = explain(hot, { decimal: ',' }).toText();
    expect(text).toMatch(/Assumed: heat-capacity ratio of air = 1,4.* \[/);
  });

  it('names values by their symbols, made unique, or by the names they were given', () => {
    const cool = cooledTemperature({ hotInlet: hot, coolantInlet: room, effectiveness: percent(75) });
    const change = subtract(
      cool,
      cooledTemperature({ hotInlet: hot, coolantInlet: room, effectiveness: percent(60) }),
    ).named('gain of the tall core');
    const text = explain(change).toText();
    expect(text).toContain('Answer: gain of the tall core = −15.46 K');
    expect(text).toContain('effectiveness = 75 %; effectiveness = 60 %');
  });

  it('shows the units and the decimal sign it is asked for, and never touches names or sources', () => {
    const text = explain(hot, { units: usShop, decimal: ',' }).toText();
    expect(text).toContain('= 249,9 °F');
    expect(text).toContain('room air = 64,4 °F');
    expect(text).toContain('1,4');
    expect(text).toMatch(/section 6\.8|chapter 1/);
  });

  it('puts many uses of one formula in one table', () => {
    const speeds = [3000, 4000, 5000].map((rpm) =>
      powerFromTorque({ torque: torque(240, 'N·m'), engineSpeed: rotationalSpeed(rpm, 'rpm') }),
    );
    const text = explain(mean(speeds)).toText();
    expect(text.match(/P = 2 \* pi \* n \* T/g)).toHaveLength(1);
    expect(text).toMatch(/T +n +P/);
    expect(text).toContain('= 100.5 kW');
  });

  it('shows a column by its range, and says how to explain one row', () => {
    const values = powerFromTorque.columns({
      torque: column('torque', [240, 250], 'N·m', 'torque'),
      engineSpeed: rotationalSpeed(4000, 'rpm'),
    });
    expect(explain(mean(values)).toText()).toContain('240…250 N·m');
    expect(() => explain(values as never)).toThrow(/explain\(column\.at\(row\)\)/);
    expect(explain(values.at(1)).toText()).toContain('Answer: P = 104.7 kW');
    expect(() => explain(3 as never)).toThrow(CalculationError);
  });

  it('folds the error of a sensor, and the scatter of repeats, into what was given', () => {
    const probe = sensor('temperature', { label: 'probe', halfWidth: temperatureDifference(0.5, 'K') });
    const rise = subtract(hot, probe.reads(temperature(18, '°C')));
    const text = explain(rise).toText();
    expect(text).toMatch(/18 °C \(standard uncertainty 0\.29/);
    expect(text).not.toContain('x + e');
    const repeated = explain(
      meanOfRepeats('stock core', [power(134, 'kW'), power(135, 'kW'), power(133.5, 'kW')]),
    ).toText();
    expect(repeated).toMatch(/scatter of 3 repeats: standard uncertainty 0\.44 kW, 2 degrees of freedom/);
    expect(repeated).not.toContain('x + e');
  });

  it('says of a solved value what equation it satisfies', () => {
    const { solution } = solve(
      {
        label: 'outlet temperature sought',
        kind: 'temperature',
        unit: '°C',
        between: [temperature(20, '°C'), temperature(200, '°C')],
      },
      (guess) => ({ residual: subtract(guess, hot) }),
    );
    expect(explain(solution).toText()).toMatch(/outlet temperature sought = 121\.1 °C, found so that .* = 0/);
  });

  it('is the same in Markdown, HTML, LaTeX and JSON', () => {
    const example = explain(hot);
    expect(example.toMarkdown()).toContain(
      '`= 291.15 K * (1 + (2.170^((1.4 - 1) / 1.4) - 1) / 0.7) = 394.22 K = 121.1 °C`',
    );
    expect(example.toHtml()).toContain('<math xmlns="http://www.w3.org/1998/Math/MathML"');
    expect(example.toHtml()).toContain('<strong>T2 = 121.1 °C</strong>');
    expect(example.toLatex()).toContain('\\begin{align*}');
    expect(example.toLatex({ siunitx: true, symbols: { PR: '\\pi_c' } })).toMatch(/\\qty\{394\.22\}\{K\}/);
    const data = JSON.parse(JSON.stringify(example)) as { steps: unknown[]; text: string };
    expect(data.steps).toHaveLength(3);
    expect(data.text).toBe('121.1 °C');
  });

  it('escapes names that came from a user or a file', () => {
    const hostile = known('<script>alert("1")</script> & `$_{x}$`', temperature(18, '°C'));
    const example = explain(subtract(hostile, temperature(10, '°C')));
    expect(example.toHtml()).not.toContain('<script>');
    expect(example.toHtml()).toContain('&lt;script&gt;');
    expect(example.toMarkdown()).not.toContain('<script>');
    expect(example.toLatex()).not.toMatch(/(?<!\\)[$_&](?!\{?\\)[x<]/);
  });

  it('carries the notes of the result', () => {
    const beyond = outletTemperature({
      inletTemperature: room,
      pressureRatio: ratio(5),
      isentropicEfficiency: percent(70),
    });
    expect(explain(beyond).toText()).toContain(
      'Note: compressor outlet temperature: pressureRatio is outside the trusted range',
    );
  });

  it('walks a chain of a hundred thousand steps', () => {
    let sum = power(0, 'kW');
    for (let i = 0; i < 1e5; i++) sum = subtract(sum, power(1, 'W'));
    expect(explain(sum).model.steps.length).toBeGreaterThan(0);
  });
});
