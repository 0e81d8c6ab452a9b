import type { Objection } from './objection.js';
import type { ComparedQuantity, ResolvedOptions } from './options.js';
import type { TakenPull } from './taken-pull.js';
import { listed } from './words.js';

/**
 * Whether power was made from a column that is called torque at the wheels. The wheels turn slower than the engine by the overall ratio, so
 * that torque times engine speed is larger than any power by it, unless the logger has divided by it: an overall ratio of 1 says so.
 */
export function wheelTorqueObjections(
  sides: readonly (readonly TakenPull[])[],
  compared: ComparedQuantity,
  { overallRatio }: ResolvedOptions,
): Objection[] {
  if (compared !== 'power' || overallRatio?.si === 1) return [];
  const headers = sides.flat().flatMap(({ pull, grid }) => {
    const header = pull.sources.torque?.header;
    const isMade = grid.powerFrom === 'torque and engine speed';
    return isMade && header !== undefined && /wheel/i.test(header.replace(/flywheel/gi, '')) ? [`“${header}”`] : [];
  });
  if (headers.length === 0) return [];
  return [
    {
      outcome: 'unit suspected',
      sentence: `Before judging: torque at the wheels (${listed([...new Set(headers)])}) times engine speed is no power, being larger by the overall ratio from the crank to the wheels.`,
      mend: 'Compare by torque, or divide torque in the log by the overall ratio. Where the logger has divided by it, say so: overallRatio of 1.',
    },
  ];
}
