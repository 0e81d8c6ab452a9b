import type { ChannelRole } from '../sweep/index.js';
import type { Kind } from '../units/index.js';
import { ROLES_OF_CORE, ROLES_OF_LOSS } from './open-questions.js';
import type { Comparison, CoreFigure } from './result.js';
import { decimals } from './words.js';

/** Effectiveness and pressure loss of both cores, where both were logged alike. */
export function coreLines(
  { baseline: a, candidate: b }: Comparison['cores'],
  names: readonly [string, string],
  caveat: (roles: readonly ChannelRole[]) => string,
): string[] {
  if (!a || !b) return [];
  const line = (
    what: string,
    figures: readonly (CoreFigure<Kind> | undefined)[],
    unit: string,
    more: string,
    roles: readonly ChannelRole[],
  ): string[] => {
    const [one, other] = figures;
    if (!one || !other) return [];
    const sides = [one, other].map((figure) => withScatter(figure, unit));
    const isScatter = sides.some((text) => text.includes('±'));
    return [
      `${what}: ${sides[0]!} with ${names[0]}, ${sides[1]!} with ${names[1]} (mean${isScatter ? ' and scatter' : ''} of the pulls${more}).${caveat(roles)}`,
    ];
  };
  const effectiveness = a.against === b.against ? [a.effectiveness, b.effectiveness] : [];
  return [
    ...line(
      `Air-side effectiveness against ${a.against}`,
      effectiveness,
      '%',
      '; a core soaks up heat through a pull',
      ROLES_OF_CORE,
    ),
    ...line(
      'Pressure lost from the compressor to the manifold, core and ducts together',
      [a.pressureLoss, b.pressureLoss],
      'kPa',
      [a, b].some(({ pressureLoss }) => pressureLoss && pressureLoss.mean.si < 0)
        ? '; none can rise on its way: the gauges do not read alike'
        : '',
      ROLES_OF_LOSS,
    ),
  ];
}

/** A mean with its scatter in the digits that the scatter leaves. */
function withScatter({ mean, scatter }: CoreFigure<Kind>, unit: string): string {
  const spread = scatter === undefined ? 0 : scatter.in(unit as never);
  const places = spread >= 10 ? 0 : 1;
  const text = decimals(spread, places);
  return `${decimals(mean.in(unit as never), places)} ${unit}${Number(text) === 0 ? '' : ` ± ${text} ${unit}`}`;
}
