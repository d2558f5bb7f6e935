import { describe, expect, it } from 'vitest';
import { parseMappingFile } from '../../../core/mapping/mapping-file.ts';
import { mappingDownload } from '../../../renderer/workbench/mapping-download.ts';
import { mapping, surveyOf } from '../support/bench-stick.ts';

describe('mappingDownload', () => {
  it('is a mapping file that the program reads back', () => {
    const { name, text } = mappingDownload(surveyOf({}), { left: mapping });
    expect(name).toBe('bench-pad-fitted-mapping.json');
    expect(parseMappingFile(JSON.parse(text))).toEqual({
      ok: true,
      value: {
        pad: { vendorId: 1, productId: 2, serial: null, unit: null },
        domain: 'sensor',
        sticks: { left: mapping },
      },
    });
  });

  it('has a name that every file system takes', () => {
    const odd = { ...surveyOf({}), name: '../../Ærø: 09:12?' };
    expect(mappingDownload(odd, { left: mapping }).name).toBe('r-09-12-mapping.json');
    expect(mappingDownload({ ...odd, name: '***' }, { left: mapping }).name).toBe('survey-mapping.json');
  });
});
