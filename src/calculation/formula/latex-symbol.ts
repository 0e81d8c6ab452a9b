import { FormulaError } from './syntax.js';

/** Commands that shape a symbol and nothing else: none reads a file, defines a command or leaves math mode. */
const allowedCommands = new Set(
  (
    'alpha beta gamma delta epsilon varepsilon zeta eta theta vartheta iota kappa lambda mu nu xi pi varpi rho varrho ' +
    'sigma varsigma tau upsilon phi varphi chi psi omega Gamma Delta Theta Lambda Xi Pi Sigma Upsilon Phi Psi Omega ' +
    'mathrm mathit mathbf mathsf mathcal mathbb operatorname dot ddot bar hat tilde vec overline underline widehat ' +
    'widetilde prime infty ell partial nabla star ast circ'
  ).split(' '),
);

/**
 * Checks that LaTeX given for a symbol is a symbol: letters, digits, sub- and superscripts, letter-shaping commands,
 * balanced braces.
 *
 * @throws FormulaError naming the symbol and what is not allowed.
 */
export function checkedLatexSymbol(name: string, latex: string): void {
  const refuse = (why: string): never => {
    throw new FormulaError(
      'formula-notation',
      `the LaTeX given for the symbol ${name} ${why}, got ${latex.slice(0, 60)}`,
    );
  };
  if (latex === '' || latex.length > 100) refuse('must have 1 to 100 characters');
  const withoutCommands = latex.replace(/\\([A-Za-z]+|.|$)/gs, (_whole, command: string) => {
    if (command !== ',' && !allowedCommands.has(command)) refuse(`may not use \\${command}`);
    return 'x';
  });
  const odd = /[^A-Za-z0-9{}_^', ]/.exec(withoutCommands);
  if (odd !== null) refuse(`may not contain ${odd[0]}`);
  let open = 0;
  for (const character of withoutCommands) {
    if (character === '{') open += 1;
    if (character === '}') open -= 1;
    if (open < 0) break;
  }
  if (open !== 0) refuse('must have balanced braces');
  if (/[_^]\s*(?:[_^}]|$)/.test(withoutCommands)) refuse('must have something in every sub- and superscript');
}
