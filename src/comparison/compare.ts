import { CalculationError, rotationalSpeed, type Column, type Quantity } from '../units/index.js';
import { corePerformance } from './core-performance.js';
import { figuresOf, rowAt } from './figures.js';
import { atEqualMixture } from './equal-mixture.js';
import { findingsOf } from './findings.js';
import { fairnessOf } from './fairness.js';
import { predictedAgainstFound } from './predicted.js';
import { foundChange, predictionOf } from './prediction.js';
import { rippleOf } from './ripple.js';
import { splitPulls } from './split.js';
import { onGrid, type Pull, type SetUp } from '../sweep/index.js';
import { answerOf } from './answer.js';
import { areaUnderCurve } from './area.js';
import { comparable } from './curves.js';
import { nextSteps } from './next-test.js';
import { commonCorrection } from './correction-challenge.js';
import { openQuestionsOf } from './open-questions.js';
import { objectionsOf } from './objections.js';
import { checkSetUps, withoutShared } from './check-set-ups.js';
import { KIND_OF_COMPARED, ownConfidence, type CompareOptions, type ResolvedOptions } from './options.js';
import { resolveOptions } from './resolve-options.js';
import { orderFinding, type OrderFinding } from './order.js';
import { isFromOutliers, outlierLines, withOutliers } from './outliers.js';
import { scatterComparisonOf } from './pull-scatter.js';
import { basisOf, restsOf } from './rests.js';
import type { ComparedQuantity, Comparison, Estimate } from './result.js';
import { sideOf } from './side.js';
import type { TakenPull } from './taken-pull.js';
import { conditionsOf } from './conditions.js';
import { placesOf, sessionsBetween, type Places, type Sessions } from './places.js';
import { preparedSetUp, preparedSides } from './prepared.js';
import { comparedRange } from './settled-range.js';
import { takePulls } from './taken-pulls.js';
import { comparisonData, comparisonText } from './text.js';
import { betweenSigned, decimals, listed, signed } from './words.js';

/**
 * Compares two set-ups from their pulls: is the difference larger than the scatter from pull to pull, how large is it, and where does
 * it come from. The pull is what is counted; points within a pull are not repeats.
 *
 * What must be done the same to both sides is done by it: the same preparation of every pull, one start for all where boost has built up.
 * What was not alike all the same, or stays open, is in `rests` and `findings`.
 *
 * @param givenBaseline - The set-up to compare with.
 * @param givenCandidate - The set-up that was changed.
 * @returns The answer with everything it rests on. Where pulls are too few, or the sides cannot be compared, the outcome says so.
 * @throws CalculationError if an option is wrong, the pulls share no range of engine speed or no channel to compare by.
 * @example
 * compare(day.setup('stock core'), day.setup('tall core'), { engineSpeed: [3500, 6500], worthwhile: power(2, 'kW'), loggedPower: 'observed' });
 */
export function compare(givenBaseline: SetUp, givenCandidate: SetUp, options: CompareOptions = {}): Comparison {
  return comparisonOf(givenBaseline, givenCandidate, options, []);
}

/** @internal A comparison that also rests on what was found over more set-ups than its own. */
export function comparisonOf(
  givenBaseline: SetUp,
  givenCandidate: SetUp,
  options: CompareOptions,
  remarks: readonly string[],
): Comparison {
  const resolved = resolveOptions(options);
  checkSetUps(givenBaseline, givenCandidate, options);
  const { baseline, candidate, remarks: prepared } = preparedSides(givenBaseline, givenCandidate, resolved);
  const pulls = [...baseline.pulls, ...candidate.pulls];
  const compared = chosenQuantity(pulls, options, resolved);
  const { from, to: upTo, start } = comparedRange([baseline, candidate], options, resolved);
  const range = { from, to: upTo, step: resolved.step, bandwidth: resolved.bandwidth };
  const grid = { ...range, engineSpeed: onGrid(pulls[0]!, range).engineSpeed.named('engine speed') };
  const to = lastOf(grid.engineSpeed, resolved);
  const places = placesOf(baseline, candidate, resolved);
  const given = [...givenBaseline.pulls, ...givenCandidate.pulls];
  const asRead = new Map(pulls.map((pull, i) => [pull, given[i]!]));
  const taken = (setUp: SetUp): TakenPull[] =>
    takePulls(setUp, compared, grid, { places: places.of, start, asRead }, resolved);
  const sides = withoutShared(taken(baseline), taken(candidate));
  const unit = resolved.units[KIND_OF_COMPARED[compared]];
  const [a, b] = [sideOf(baseline.name, sides[0], unit), sideOf(candidate.name, sides[1], unit)];
  const counts = (side: readonly TakenPull[]): TakenPull[] => side.filter((pull) => pull.result.accepted);
  const accepted = [counts(sides[0]), counts(sides[1])] as const;
  const outliers = withOutliers(accepted, [a.name, b.name]);
  // The same pulls over the same range, so that only what was taken out makes the difference.
  const cleaned =
    outliers.length === 0
      ? undefined
      : comparisonOf(
          givenBaseline,
          givenCandidate,
          {
            ...options,
            engineSpeed: [from, upTo],
            settled: 'leave in',
            prepare: { ...options.prepare, outliers: 'missing' },
          },
          [],
        );
  // A unit is not doubted for readings that jump.
  const objections = objectionsOf(
    { accepted, sides: [a, b], setUps: [baseline, candidate], range: [from, to], compared, when: places.when },
    resolved,
  ).filter(({ outcome: one }) => one !== 'unit suspected' || !isFromOutliers(cleaned));
  const sessions = sessionsBetween([accepted[0].map(({ pull }) => pull), accepted[1].map(({ pull }) => pull)]);
  const finding = findingOf(accepted, places, sessions, resolved);
  const answer = objections.some(({ outcome }) => outcome === 'too few pulls')
    ? undefined
    : answerOf({ baseline: a, candidate: b, accepted, compared, from, to, finding }, resolved);
  const outcome = objections[0]?.outcome ?? answer!.outcome;
  const next = nextSteps({ outcome, objections, answer, sides: [a, b] }, resolved);
  const names = [a.name, b.name] as const;
  const valid = objections.length === 0 ? answer : undefined;
  const order = answer?.drift.takenOut ? finding.made : undefined;
  const relative = valid && { sides: splitPulls(accepted, names, resolved), names, order };
  const found = relative && foundChange(relative, valid.relative, resolved);
  const more = {
    openQuestions: openQuestionsOf(accepted),
    figures: valid ? figuresOf({ accepted, names, finding, driftTakenOut: valid.drift.takenOut }, resolved) : [],
    area: areaUnderCurve({
      compared,
      means: [a.overall, b.overall],
      overall: valid?.overall,
      relative: valid?.relative,
      from,
      to,
    }),
    scatter: valid?.scatter && scatterComparisonOf(valid.scatter),
    pullScatter: answer?.scatter,
    fairness: fairnessOf(accepted, names, valid?.split, resolved),
    equalMixture: answer && atEqualMixture({ names, accepted, order }, resolved),
    cores: { baseline: corePerformance(accepted[0]), candidate: corePerformance(accepted[1]) },
    prediction: relative && predictionOf(relative, found!, resolved),
    predicted: found && predictedAgainstFound(found, resolved),
    ripple: rippleOf(accepted.flat().map(({ pull }) => pull)),
  };
  const conditions = conditionsOf(
    { names, accepted, setUps: [baseline, candidate], compared, answer, fairness: more.fairness },
    resolved,
  );
  const basis = basisOf(compared, resolved, commonCorrection(accepted.flat(), compared));
  const comparison = {
    baseline: a,
    candidate: b,
    compared,
    basis,
    engineSpeed: { from, to, step: resolved.step },
    settled: start,
    confidence: resolved.confidence,
    options,
    worthwhile: resolved.worthwhile,
    outcome,
    headline: objections[0]?.sentence ?? answer!.headline,
    rests: [
      ...restsOf(a, b, answer && { answer, finding, isResult: valid !== undefined }, resolved, basis),
      ...outlierLines(outliers, { outcome, overall: answer?.overall }, cleaned, resolved.units),
      ...more.fairness.flatMap(({ state, stops, sentence }) => (state === 'differs' && !stops ? [sentence] : [])),
      ...(compared.startsWith('air') ? lacking(pulls).map((words) => `Not compared by power: ${words}.`) : []),
      ...withAllPulls(
        givenBaseline,
        givenCandidate,
        { ...options, engineSpeed: [from, to], settled: 'leave in' },
        valid?.overall,
      ),
      ...(sessions.remark === undefined ? [] : [sessions.remark]),
      ...places.remarks,
      ...prepared,
      ...(remarks.length > 0 ? remarks : start.remarks),
      ...conditions.rests,
      ...more.openQuestions.map(({ sentence }) => sentence),
    ],
    driftSeparable: answer?.drift.separable ?? false,
    driftTakenOut: answer?.drift.takenOut ?? false,
    next,
    overall: answer?.overall,
    relative: answer?.relative,
    curve: answer?.curve,
    split: answer?.split,
    ...more,
    findings: [
      ...findingsOf({ ...more, names, compared, odd: valid?.odd ?? [], units: resolved.units }),
      ...conditions.findings,
    ],
    objections: objections.map(({ sentence }) => sentence),
    cautions: CAUTIONS,
  };
  return Object.assign(comparison, {
    toString: () => comparisonText(comparison),
    toJSON: () => comparisonData(comparison),
    [Symbol.for('nodejs.util.inspect.custom')]: () => comparisonText(comparison),
  });
}

/**
 * Compares several candidates with one baseline at once; their bands and intervals share the chance of error, and their range of engine
 * speed is one. Comparisons that belong together without one baseline share the chance by `setUps`, their number.
 */
export function compareAll(baseline: SetUp, candidates: readonly SetUp[], options: CompareOptions = {}): Comparison[] {
  for (const candidate of candidates) checkSetUps(baseline, candidate, options);
  const together = { setUps: candidates.length, ...options };
  const { engineSpeed, remarks } = sharedRange([baseline, ...candidates], together);
  return candidates.map((candidate) => comparisonOf(baseline, candidate, { ...together, engineSpeed }, remarks));
}

/** @internal The range that comparisons of several set-ups have in common, and what was said in finding it. */
export function sharedRange(
  setUps: readonly SetUp[],
  options: CompareOptions,
): { readonly engineSpeed: NonNullable<CompareOptions['engineSpeed']>; readonly remarks: readonly string[] } {
  if (options.engineSpeed !== undefined) return { engineSpeed: options.engineSpeed, remarks: [] };
  const resolved = resolveOptions(options);
  const prepared = setUps.map((setUp) => preparedSetUp(setUp, resolved));
  const { from, to, start } = comparedRange(prepared, options, resolved);
  return { engineSpeed: [from, to], remarks: start.remarks };
}

/** Where pulls were left out by hand: the answer with them counted, so that a reader sees what leaving them out did. */
function withAllPulls(
  baseline: SetUp,
  candidate: SetUp,
  { leaveOut, ...options }: CompareOptions,
  overall: Estimate | undefined,
): string[] {
  if (Object.keys(leaveOut ?? {}).length === 0 || !overall) return [];
  const all = compare(baseline, candidate, options);
  if (!all.overall) return [];
  const { value, low, high } = all.overall;
  const units = options.units ?? {};
  return [
    `With the pulls counted that were left out by hand, the difference is ${signed(value, units)}, between ${betweenSigned(low, high, units)}.`,
  ];
}

/** Cautions that bear on any answer of this kind. */
const CAUTIONS: readonly string[] = [
  'A gain on the bench is not a licence to run it: a leaner mixture or a hotter charge than here can detonate. Let someone licensed set fuel and spark.',
  'A room with a fan is not a car behind a hot radiator: expect less of the gain on the road.',
];

/** The last speed of the grid, which may lie below the end of the range; speeds to be quoted must be on it. */
function lastOf(
  engineSpeed: Column<'rotational speed'>,
  { step, atSpeeds }: ResolvedOptions,
): Quantity<'rotational speed'> {
  const speeds = engineSpeed.in('rpm');
  const [first, last] = [speeds[0]!, speeds[speeds.length - 1]!];
  const grid = `${decimals(first, 0)} to ${decimals(last, 0)} rpm in steps of ${decimals(step.in('rpm'), 0)} rpm`;
  if (speeds.length < 2) {
    const got = `steps of ${decimals(step.in('rpm'), 0)} rpm, of which the range holds none`;
    const mend = 'Give a wider engineSpeed or a smaller step.';
    throw new CalculationError('compare', [
      { code: 'impossible', input: 'step', need: 'smaller than the range of engine speed', got, mend },
    ]);
  }
  const off = atSpeeds.filter((speed) => rowAt(speeds, speed) < 0);
  if (off.length > 0) {
    const got = listed(off.map((speed) => `${decimals(speed.in('rpm'), 0)} rpm`));
    throw new CalculationError('compare', [
      { code: 'impossible', input: 'atSpeeds', need: `speeds of the grid, ${grid}`, got, mend: '' },
    ]);
  }
  return rotationalSpeed(last, 'rpm');
}

function chosenQuantity(
  pulls: readonly Pull[],
  options: CompareOptions,
  { worthwhile }: ResolvedOptions,
): ComparedQuantity {
  const possible = comparable(pulls);
  const wanted =
    options.compare ??
    possible.find((one) => worthwhile === undefined || KIND_OF_COMPARED[one] === worthwhile.kind) ??
    possible[0];
  if (wanted === undefined || !possible.includes(wanted)) {
    const got = [
      possible.length > 0 ? `channels for ${listed(possible)} only` : 'pulls without torque, power or air flow',
      ...lacking(pulls),
    ].join('; ');
    throw new CalculationError('compare', [
      {
        code: 'missing',
        input: 'compare',
        need: 'something that every pull has a channel for',
        got,
        mend: 'Say which column is torque or air flow: channels: { torque: channel(...) }.',
      },
    ]);
  }
  if (worthwhile !== undefined && worthwhile.kind !== KIND_OF_COMPARED[wanted]) {
    throw new CalculationError('compare', [
      {
        code: 'kind',
        input: 'worthwhile',
        need: `a ${KIND_OF_COMPARED[wanted]}, being compared by ${wanted}`,
        got: [`a ${worthwhile.kind}`, ...lacking(pulls)].join('; '),
        mend: '',
      },
    ]);
  }
  return wanted;
}

/** Pulls without torque or power among others that have it. */
function lacking(pulls: readonly Pull[]): string[] {
  const without = pulls.filter(({ channels }) => !channels.torque && !channels.power);
  if (without.length === 0 || without.length === pulls.length) return [];
  return [`no torque or power in ${listed(without.map((pull) => pull.file))}`];
}

function findingOf(
  accepted: readonly [TakenPull[], TakenPull[]],
  { when }: Places,
  { confounded }: Sessions,
  options: ResolvedOptions,
): OrderFinding {
  const placed = accepted.flatMap((side, i) =>
    side.flatMap(({ pull, result }) =>
      result.mean
        ? [
            {
              side: i === 0 ? ('A' as const) : ('B' as const),
              mean: result.mean.si,
              order: result.order,
              clock: when(pull),
            },
          ]
        : [],
    ),
  );
  const finding = orderFinding(placed, ownConfidence(options));
  return confounded === undefined ? finding : { ...finding, hidden: confounded, corrected: undefined };
}
