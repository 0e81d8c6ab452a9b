import type { StandingNote } from '../calculation/index.js';

/* @__NO_SIDE_EFFECTS__ */
function caution(message: string): StandingNote {
  return { code: 'caution', message };
}

/** What anyone who acts on a figure for sprayed carbon dioxide must know. */
export const CARBON_DIOXIDE_CAUTIONS = [
  caution(
    'Liquid carbon dioxide is stored at 50 to 70 bar: use rated bottles, hoses and valves, strapped down, and leave no liquid shut in between two valves.',
  ),
  caution(
    'Carbon dioxide suffocates before it is noticed and gathers low: ventilate, watch a gas meter, never spray in a closed room, and follow the local rules for compressed gas.',
  ),
  caution('Snow and nozzle are at -78 °C: frostbite. Wear gloves and eye protection, keep hands and hoses clear.'),
  caution(
    'Frost from humid air blocks the face of the core, and carbon dioxide drawn into the intake displaces oxygen: both cost power.',
  ),
];

/** The same for nitrous oxide. */
export const NITROUS_OXIDE_CAUTIONS = [
  caution(
    'Nitrous oxide must not reach the intake in a comparison: it brings oxygen, so the run measures that and not the cooling. Here it is a coolant only.',
  ),
  caution(
    'Liquid nitrous oxide is stored at 45 to 70 bar, feeds fire and can decompose with violence when heated: rated, clean, oil-free parts, no flame near it.',
  ),
  caution(
    'Nitrous oxide dulls and suffocates, at far lower limits than carbon dioxide: ventilate, never spray in a closed room, and follow the local rules.',
  ),
  caution('The spray is at -88 °C: frostbite. Wear gloves and eye protection, keep hands and hoses clear.'),
  caution('Frost from humid air blocks the face of the core, which costs power.'),
];

/** The same for dry ice. */
export const DRY_ICE_CAUTIONS = [
  caution('Dry ice is at -78 °C: frostbite. Insulated gloves and eye protection; never in a closed vessel, it bursts.'),
  caution(
    'Dry ice gives off carbon dioxide, which suffocates before it is noticed and gathers low: ventilate, never carry or use it in a closed room or car.',
  ),
  caution('Frost from humid air blocks the face of the core, which costs power.'),
];

/** The same for water: common practice, no source. */
export const WATER_CAUTIONS = [
  caution(
    'Sprayed water wets the bench: keep it off sockets, cables, instruments and the brake of the dynamometer, switch off before wiping, and mop a slippery floor at once.',
  ),
  caution(
    'Water on hot exhaust parts flashes into steam and can crack them, and standing water breeds germs that a spray carries into the lungs: keep it off hot metal, use clean fresh water.',
  ),
];
