import { describe, expect, it } from 'vitest';
import { packageManifest } from '../../.ci/topics.mjs';
import { version } from '../../src/report/version.js';

describe('package.json', () => {
  it('exports each topic folder of src, and nothing else (npm run exports brings it up to date)', () => {
    const { text, wanted } = packageManifest();
    const fields = ({ exports, typesVersions, bin, main, types }: Record<string, unknown>) => ({
      exports,
      typesVersions,
      bin,
      main,
      types,
    });
    expect(fields(JSON.parse(text))).toEqual(fields(JSON.parse(wanted)));
  });

  it('has the version that reports name', () => {
    expect(JSON.parse(packageManifest().text)).toHaveProperty('version', version);
  });

  it('asks for two packages at run time, and for the picture maker only if it is there', () => {
    const manifest = JSON.parse(packageManifest().text);
    expect(Object.keys(manifest.dependencies)).toEqual(['decimal.js', 'udsv']);
    expect(Object.keys(manifest.peerDependencies)).toEqual(Object.keys(manifest.peerDependenciesMeta));
    expect(Object.values(manifest.peerDependenciesMeta)).toEqual([{ optional: true }, { optional: true }]);
  });
});
