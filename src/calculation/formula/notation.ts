/** A value as it is shown: the number already formatted with a decimal point, the unit apart. */
export interface ShownValue {
  readonly number: string;
  readonly unit?: string;
}

/**
 * What to show in place of a symbol: another symbol (`Δp1`, `mdot_a`), words, a value, or the values of a list.
 * All of it is plain text; whatever writes it escapes it.
 */
export type SymbolNotation =
  { readonly symbol: string } | { readonly label: string } | ShownValue | { readonly list: readonly ShownValue[] };

/** Gives what to show in place of a symbol; undefined shows the symbol as it is. */
export type NotationOf = (symbol: string) => SymbolNotation | undefined;

/** A symbol taken apart for typesetting. */
export interface SymbolParts {
  readonly difference: boolean;
  /** Letters, or one Greek letter. */
  readonly base: string;
  /** A single letter slopes; an abbreviation such as PR stands upright, or it would read as P times R. */
  readonly upright: boolean;
  /** A dot above: a rate. */
  readonly rate: boolean;
  readonly subscript: string;
}

const greek: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  epsilon: 'ε',
  eps: 'ε',
  zeta: 'ζ',
  eta: 'η',
  theta: 'θ',
  iota: 'ι',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'μ',
  nu: 'ν',
  xi: 'ξ',
  pi: 'π',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  chi: 'χ',
  psi: 'ψ',
  omega: 'ω',
  Gamma: 'Γ',
  Delta: 'Δ',
  Theta: 'Θ',
  Lambda: 'Λ',
  Xi: 'Ξ',
  Pi: 'Π',
  Sigma: 'Σ',
  Phi: 'Φ',
  Psi: 'Ψ',
  Omega: 'Ω',
};

/** Takes a symbol apart: `T2s` is T with subscript 2s, `eta_c` is η with subscript c, `mdot_a` is m with a dot. */
export function takeSymbolApart(symbol: string): SymbolParts {
  const difference = symbol.length > 1 && symbol.startsWith('Δ');
  const name = difference ? symbol.slice(1) : symbol;
  const characters = [...name];
  const firstBreak = characters.findIndex((character, index) => index > 0 && /[0-9_]/.test(character));
  const letters = firstBreak < 0 ? name : characters.slice(0, firstBreak).join('');
  const rest = firstBreak < 0 ? '' : characters.slice(firstBreak).join('');
  const undotted = letters.endsWith('dot') ? asLetter(letters.slice(0, -3)) : undefined;
  const base = undotted ?? asLetter(letters) ?? letters;
  return {
    difference,
    base,
    upright: [...base].length > 1,
    rate: undotted !== undefined,
    subscript: rest.split('_').filter(Boolean).join(','),
  };
}

function asLetter(letters: string): string | undefined {
  if (Object.hasOwn(greek, letters)) return greek[letters];
  return [...letters].length === 1 ? letters : undefined;
}

/** The English name LaTeX has for a Greek letter. */
export function nameOfGreekLetter(letter: string): string | undefined {
  return Object.keys(greek).find((name) => greek[name] === letter && name !== 'eps');
}
