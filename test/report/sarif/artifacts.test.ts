import assert from 'node:assert/strict';
import { Artifacts } from '../../../src/report/sarif/artifacts';
import { picture } from '../text/support';

const WHOLE = { startLine: 1, startColumn: 1, endLine: 1, endColumn: 1 };

describe('locations in SARIF', () => {
  it('lead to the picture in the repository, and name a page beyond the first', () => {
    const artifacts = new Artifacts({ folder: 'books/ä/', settings: null });
    const artifactLocation = { uri: 'books/%C3%A4/1%3A2.tif', uriBaseId: '%SRCROOT%', index: 0 };
    const physicalLocation = { artifactLocation, region: WHOLE };
    assert.deepEqual(artifacts.picture(picture('1:2.tif')), { physicalLocation });
    assert.deepEqual(artifacts.picture(picture('1:2.tif', [], { page: 2 })), {
      physicalLocation,
      logicalLocations: [{ name: 'page 2', kind: 'page' }],
    });
    assert.equal(artifacts.list.length, 1);
  });

  it('lead to the settings for the book, to its folder where it has none', () => {
    const uri = (folder: string, settings: string | null) =>
      new Artifacts({ folder, settings }).book().physicalLocation.artifactLocation.uri;
    assert.equal(uri('books/', 'books/evengrey.json'), 'books/evengrey.json');
    assert.equal(uri('books/', null), 'books/');
    assert.equal(uri('', null), './');
  });
});
