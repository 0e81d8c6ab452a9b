import { describe, expect, it } from 'vitest';
import { operatingPoint, throughPull } from '../../src/charge-path/index.js';
import { scenarioReport, type ScenarioReportContent } from '../../src/report/index.js';
import { heatCapacity, rotationalSpeed, time } from '../../src/units/index.js';
import { referenceCase, speedOfReference, withCoolingAir } from '../charge-path/installations.js';
import { problemsOf } from './well-formed.js';

const hostile = `<b>fan</b> & "more"`;
const scenarios = [
  { name: 'bench', point: operatingPoint(referenceCase, speedOfReference), assumed: 'a fan' },
  { name: hostile, point: operatingPoint(withCoolingAir(1), speedOfReference) },
];
const installation = { ...referenceCase, core: { ...referenceCase.core, heatCapacity: heatCapacity(5382, 'J/K') } };
const content: ScenarioReportContent = {
  heading: `Scenarios <of> ${hostile}`,
  answers: ['A fan is worth something.'],
  scenarios,
  drawn: ['bench', hostile],
  pulls: [
    {
      name: 'held',
      pull: throughPull(installation, {
        from: rotationalSpeed(3000, 'rpm'),
        to: speedOfReference,
        duration: time(5, 's'),
      }),
    },
  ],
  tables: [{ caption: 'Cost', columns: [{ head: 'what', align: 'left' }], rows: [['CO2']] }],
  worked: hostile,
};

describe('the page about scenarios', () => {
  it('is one well-formed page with its pictures, and names that cannot break it', async () => {
    const html = await scenarioReport(content).html;
    expect(problemsOf(html)).toEqual([]);
    expect(html).not.toContain('<b>fan</b>');
    expect(html.match(/<figure /g)).toHaveLength(5);
    expect(html).not.toMatch(/<script|NaN|undefined/);
  });

  it('says the change, what it is made of, what was assumed, and the cautions', () => {
    const { markdown } = scenarioReport(content);
    expect(markdown).toContain('+2.1');
    expect(markdown).toContain('of it temperature and breathing');
    expect(markdown).toContain('bench: a fan');
    expect(markdown).toContain('found so that');
    expect(markdown).toMatch(/Detonation/);
  });

  it('refuses a single scenario, and a name that is none', () => {
    expect(() => scenarioReport({ ...content, scenarios: scenarios.slice(0, 1) })).toThrow(/at least two scenarios/);
    expect(() => scenarioReport({ ...content, worked: 'moon' })).toThrow(/one of 'bench'/);
  });
});
