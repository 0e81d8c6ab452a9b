import { topics } from './.ci/topics.mjs';

/** @type {Partial<import('typedoc').TypeDocOptions>} */
export default {
  name: 'coldside',
  entryPoints: Object.values(topics()),
  sortEntryPoints: false,
  tsconfig: 'tsconfig.json',
  out: 'docs/site',
  readme: 'README.md',
  excludeInternal: true,
  excludePrivate: true,
  categorizeByGroup: false,
  disableSources: true,
  hideGenerator: true,
  validation: { notExported: true, invalidLink: true, notDocumented: true },
  // Properties whose name and type say it all go without; the inputs of calculations have a test of their own.
  requiredToBeDocumented: ['Variable', 'Function', 'Class', 'Interface', 'TypeAlias', 'Method', 'Accessor'],
  intentionallyNotExported: [
    'src/units/kinds.ts:KINDS',
    'src/units/constructors.ts:Constructor',
    'src/units/constructors.ts:PlainConstructor',
    'src/units/kinds.ts:Same',
    'src/calculation/works.ts:WORKS',
    'src/correction/correction-factor.ts:BOOST_CONTROLS',
  ],
  treatWarningsAsErrors: true,
};
