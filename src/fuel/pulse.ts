import { assumed, calculation, commonPractice, constant, derived, input, output } from '../calculation/index.js';
import { fourStroke, wholeCycles } from '../engine/cycle.js';
import { percent } from '../units/index.js';

/** The duty cycle that injectors are sized to: some room is kept for dead time, wear and a cold day. */
export const usualDutyLimit = constant('fuel/duty-limit', percent(85), {
  label: 'duty cycle an injector is sized to',
  source: commonPractice('80 to 90 %'),
  halfWidth: 0.05,
});

/**
 * Duty cycle of an injector that opens once a cycle: the share of the cycle for which it is commanded open.
 *
 * @function
 * @returns The duty cycle. Above 100 % the injector is simply open, the mixture no longer follows the command, and the
 * answer carries a note.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * injectorDutyCycle({ pulseWidth: time(12, 'ms'), engineSpeed: rotationalSpeed(6000, 'rpm') }).in('%') //=> 60
 */
export const injectorDutyCycle = calculation({
  name: 'injector duty cycle',
  task: 'fuel the charge',
  inputs: {
    /** Commanded opening, dead time included. */
    pulseWidth: input('t_p', 'time', { min: 0, max: 1, typical: 0.012 }),
    /** Engine speed. */
    engineSpeed: input('n', 'rotational speed', { min: 0, max: 1000, typical: 100 }),
    /** Revolutions between two openings. */
    revolutionsPerCycle: assumed('n_R', 'ratio', { min: 1, max: 2, assume: fourStroke }),
  },
  output: output('D', 'ratio', '%'),
  formula: 't_p * n / n_R',
  si: (pulse, n, nR) => (pulse * n) / nR,
  rules: [
    wholeCycles(2),
    {
      need: 'a pulse that ends before the next begins (the injector is open all the time)',
      holds: (pulse, n, nR) => pulse * n <= nR,
      otherwise: 'note',
    },
  ],
  rises: ['t_p', 'n'],
  sources: [derived('pulse over the time of one cycle')],
});

/**
 * Fuel that one opening of an injector delivers.
 *
 * @function
 * @returns The volume of fuel.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible, or the pulse is shorter than the
 * dead time.
 * @example
 * fuelPerShot({
 *   staticFlow: volumeFlow(550, 'cm³/min'),
 *   pulseWidth: time(12, 'ms'),
 *   deadTime: time(0.9, 'ms'),
 * }).in('mm³') //=> 101.75
 */
export const fuelPerShot = calculation({
  name: 'fuel per shot',
  task: 'fuel the charge',
  inputs: {
    /** Flow of the open injector at the pressure difference it has. */
    staticFlow: input('Q', 'volume flow', { min: 1e-8, max: 1e-3, typical: 9.2e-6 }),
    /** Commanded opening, dead time included. */
    pulseWidth: input('t_p', 'time', { min: 0, max: 1, typical: 0.012 }),
    /**
     * Time lost in opening less that gained in closing, from the maker's table for the battery voltage and pressure;
     * 0.5 to 1.5 ms.
     */
    deadTime: input('t_d', 'time', { min: 0, max: 0.01, typical: 0.0009 }),
  },
  output: output('V_f', 'volume', 'mm³'),
  formula: 'Q * (t_p - t_d)',
  si: (flow, pulse, dead) => flow * (pulse - dead),
  rules: [
    { need: 'the pulse must be at least as long as the dead time', holds: (_flow, pulse, dead) => pulse >= dead },
  ],
  rises: ['Q', 't_p'],
  falls: ['t_d'],
  sources: [derived('static flow over the time the injector is open'), commonPractice('dead time 0.5 to 1.5 ms')],
});

/**
 * Pulse width that delivers a volume of fuel: the inverse of {@link fuelPerShot}.
 *
 * @function
 * @returns The commanded opening, dead time included.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * pulseWidthFromFuelPerShot({
 *   fuelPerShot: volume(101.75, 'mm³'),
 *   staticFlow: volumeFlow(550, 'cm³/min'),
 *   deadTime: time(0.9, 'ms'),
 * }).in('ms') //=> 12
 */
export const pulseWidthFromFuelPerShot = calculation({
  name: 'pulse width from fuel per shot',
  task: 'fuel the charge',
  inputs: {
    /** Volume of fuel of one opening. */
    fuelPerShot: input('V_f', 'volume', { min: 0, max: 1e-4, typical: 1e-7 }),
    /** Flow of the open injector at the pressure difference it has. */
    staticFlow: input('Q', 'volume flow', { min: 1e-8, max: 1e-3, typical: 9.2e-6 }),
    /**
     * Time lost in opening less that gained in closing, from the maker's table for the battery voltage and pressure;
     * 0.5 to 1.5 ms.
     */
    deadTime: input('t_d', 'time', { min: 0, max: 0.01, typical: 0.0009 }),
  },
  output: output('t_p', 'time', 'ms'),
  formula: 'V_f / Q + t_d',
  si: (volume, flow, dead) => volume / flow + dead,
  rises: ['V_f', 't_d'],
  falls: ['Q'],
  sources: [derived('static flow over the time the injector is open'), commonPractice('dead time 0.5 to 1.5 ms')],
});

/**
 * Static flow that each injector must have for an engine's fuel: the size to buy, at the pressure difference the rail
 * will keep.
 *
 * Check pump, line and filter for the same flow. Too small is not a loss of power but a lean mixture at full boost,
 * which destroys engines; have the installation checked by someone qualified, fuel leaks burn.
 *
 * @function
 * @returns The static flow of one injector.
 * @throws CalculationError if an input is missing, of the wrong kind or impossible.
 * @example
 * injectorFlowNeeded({
 *   fuelMassFlow: massFlow(69, 'kg/h'),
 *   injectors: ratio(4),
 *   fuelDensity: density(0.745, 'kg/L'),
 * }).in('cm³/min') //=> 454.007
 */
export const injectorFlowNeeded = calculation({
  name: 'injector flow needed',
  task: 'fuel the charge',
  inputs: {
    /** Mass flow of fuel for the whole engine at its highest. */
    fuelMassFlow: input('mdot_f', 'mass flow', { min: 0, max: 10, typical: 0.015 }),
    /** Number of injectors that share it. */
    injectors: input('N_inj', 'ratio', { min: 1, max: 64, typical: 4 }),
    /** Density of the fuel at its temperature. */
    fuelDensity: input('rho_f', 'density', { min: 400, max: 1200, typical: 749 }),
    /** Largest duty cycle allowed. */
    dutyLimit: assumed('D_max', 'ratio', { min: 0.1, max: 1, trusted: [0.1, 0.9], assume: usualDutyLimit }),
  },
  output: output('Q', 'volume flow', 'cm³/min'),
  formula: 'mdot_f / (N_inj * D_max * rho_f)',
  si: (fuel, injectors, density, duty) => fuel / (injectors * duty * density),
  rules: [
    {
      need: 'a whole number of injectors',
      holds: (_fuel, injectors) => Number.isInteger(injectors),
      otherwise: 'note',
    },
  ],
  rises: ['mdot_f'],
  falls: ['D_max', 'rho_f'],
  sources: [
    derived('fuel shared out over the time the injectors may be open'),
    commonPractice('duty limit 80 to 90 %'),
  ],
});
