import assert from 'node:assert/strict';
import { nearPicture } from '../../src/book/near-picture';

describe('the picture that was probably meant', () => {
  const book = ['Bilder/11 Hafen.jpg', 'Bilder/12 Küche.jpg', 'Bilder/2.jpg', 'alt/Garten.tif'];

  it('has a name that is near, in the same folder', () => {
    for (const name of ['12 Kueche.jpg', '12 Kuche.jpg', '12-Küche.jpg', '12 Ku\u0308che.png', '12 Küchee'])
      assert.equal(nearPicture(`Bilder/${name}`, book), 'Bilder/12 Küche.jpg', name);
  });

  it('is the only one of its name elsewhere', () => {
    assert.equal(nearPicture('Bilder/Garten.jpg', book), 'alt/Garten.tif');
    assert.equal(nearPicture('Bilder/Garten.jpg', [...book, 'neu/Garten.jpg']), null);
  });

  it('is not guessed by the folder that it has in common with others, nor by a letter', () => {
    assert.equal(nearPicture('Bilder/14 Turm.jpg', book), null);
    assert.equal(nearPicture('Bilder/1.jpg', book), null);
    assert.equal(nearPicture('Bilder/2.tiff', book), 'Bilder/2.jpg');
  });
});
