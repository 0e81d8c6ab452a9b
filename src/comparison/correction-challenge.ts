import { correctionStandards, standardOfTradeName } from '../correction/index.js';
import type { SaidCorrection } from '../sweep/index.js';
import type { Objection } from './objection.js';
import type { ComparedQuantity, ResolvedOptions } from './options.js';
import type { TakenPull } from './taken-pull.js';
import { decimals, listed, named, pullsOf } from './words.js';

type Said = SaidCorrection | 'nothing';

/** What the column that is compared says of a correction, in the header of a pull. */
function saidBy({ pull, grid }: TakenPull, compared: ComparedQuantity): Said {
  const isLogged = compared === 'power' && grid.powerFrom === 'logged';
  return pull.sources[isLogged ? 'power' : 'torque']?.correction ?? 'nothing';
}

/** What the headers of all pulls say of a correction; `differs` where it is not one thing, undefined where they say nothing. */
export function commonCorrection(
  pulls: readonly TakenPull[],
  compared: ComparedQuantity,
): SaidCorrection | 'differs' | undefined {
  const said = new Set(pulls.map((pull) => saidBy(pull, compared)));
  const [only] = said;
  if (said.size > 1) return 'differs';
  return only === 'nothing' ? undefined : only;
}

/**
 * Whether corrected numbers would be held against observed ones, or numbers corrected to one standard against another: the correction
 * alone then makes a difference as large as a core does. By what the headers say and by what the options say of them.
 */
export function correctionObjections(
  sides: readonly [readonly TakenPull[], readonly TakenPull[]],
  names: readonly [string, string],
  compared: ComparedQuantity,
  { loggedPower }: ResolvedOptions,
): Objection[] {
  if (compared === 'air flow' || compared === 'air per cycle') return [];
  const said = sides.map((side) => [...new Set(side.map((pull) => saidBy(pull, compared)))]) as [Said[], Said[]];
  const all = [...new Set(said.flat())];
  const contradicting = all.filter((one) =>
    loggedPower === 'observed'
      ? one !== 'nothing' && one !== 'observed'
      : loggedPower === 'corrected' && one === 'observed',
  );
  if (contradicting.length > 0) {
    const which = sides.flatMap((_, i) => (said[i]!.some((one) => contradicting.includes(one)) ? [names[i]!] : []));
    return [
      objection(
        `the logs of ${listed(which.map(named))} say that ${compared} is ${listed(contradicting.map(inWords))}, and loggedPower says ${loggedPower}`,
      ),
    ];
  }
  // Where the header is silent the owner's word counts, and "corrected" alone contradicts no standard.
  const isTold = loggedPower !== 'unknown';
  const apart = all.filter((one) => !isTold || (one !== 'nothing' && one !== 'corrected'));
  if (apart.length < 2) return [];
  const sentence =
    said[0].join() === said[1].join()
      ? `${compared} of both sets is ${listed(all.map(inWords))}, differing from pull to pull`
      : `${compared} of ${pullsOf(names[1])} is ${listed(said[1].map(inWords))}, and of ${pullsOf(names[0])} ${listed(said[0].map(inWords))}`;
  return [objection(`by the headers of the logs ${sentence}${betweenStandards(apart)}`)];
}

function objection(what: string): Objection {
  return {
    outcome: 'reading suspected',
    sentence: `Before judging: ${what}. A correction alone changes the numbers by as much as a core does.`,
    mend: "Log both sets the same way, as observed or corrected to one standard. Where a header is silent or wrong, mend it or say what is meant for all pulls: loggedPower: 'observed' or loggedPower: 'corrected'.",
  };
}

function inWords(said: Said): string {
  switch (said) {
    case 'nothing':
      return 'not said to be corrected';
    case 'observed':
      return 'as observed';
    case 'corrected':
      return 'corrected, not said to what';
    default:
      return `corrected to ${said}`;
  }
}

/** How far two standards lie apart by their reference air alone: pressure, and the square root of temperature, as all of them but for exponents. */
function betweenStandards(said: readonly Said[]): string {
  const standards = said.flatMap((one) => {
    const standard = standardOfTradeName(one);
    return standard === undefined || standard === 'none'
      ? []
      : [{ one, air: correctionStandards[standard].atmosphere }];
  });
  const [a, b] = standards;
  if (!a || !b || standards.length !== 2) return '';
  const factor = (a.air.pressure.si / b.air.pressure.si) * Math.sqrt(b.air.temperature.si / a.air.temperature.si);
  const percent = decimals(Math.abs((Math.max(factor, 1 / factor) - 1) * 100), 1);
  if (Number(percent) === 0) return '';
  const [more, less] = factor > 1 ? [a, b] : [b, a];
  return `: by its reference air alone ${more.one} reads ${percent} % above ${less.one}`;
}
