import { corePerformance } from './core-performance.js';
import { figuresOf } from './figures.js';
import { atEqualMixture } from './equal-mixture.js';
import { findingsOf } from './findings.js';
import { fairnessOf } from './fairness.js';
import { predictedAgainstFound } from './predicted.js';
import { foundChange, predictionOf } from './prediction.js';
import { rippleOf } from './ripple.js';
import { splitPulls } from './split.js';
import { onGrid, type SetUp } from '../sweep/index.js';
import { answerOf } from './answer.js';
import { areaUnderCurve } from './area.js';
import { chosenQuantity, lacking } from './compared-quantity.js';
import { nextSteps } from './next-test.js';
import { commonCorrection } from './correction-challenge.js';
import { openQuestionsOf } from './open-questions.js';
import { objectionsOf } from './objections.js';
import { checkSetUps, withoutShared } from './check-set-ups.js';
import { KIND_OF_COMPARED, type CompareOptions } from './options.js';
import { resolveOptions } from './resolve-options.js';
import { findingOf } from './drift-finding.js';
import { lastOf } from './grid-end.js';
import { isFromOutliers, outlierLines, withOutliers } from './outliers.js';
import { scatterComparisonOf } from './pull-scatter.js';
import { basisOf, restsOf } from './rests.js';
import type { Comparison, Estimate } from './result.js';
import { sideOf } from './side.js';
import type { TakenPull } from './taken-pull.js';
import { conditionsOf } from './conditions.js';
import { placesOf, sessionsBetween } from './places.js';
import { preparedSetUp, preparedSides } from './prepared.js';
import { comparedRange } from './settled-range.js';
import { takePulls } from './taken-pulls.js';
import { comparisonData, comparisonText } from './text.js';
import { betweenSigned, signed } from './words.js';

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
