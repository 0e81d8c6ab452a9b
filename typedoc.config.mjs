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
  treatWarningsAsErrors: true,
};
