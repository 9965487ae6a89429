// no-unit-test: settings of the library only
import './decode-binary';
import sharp from 'sharp';

// a picture is read once, so sharp's cache only costs memory; two lanes, not threads, share the cores
sharp.cache(false);
sharp.concurrency(1);

export { sharp };
