import { OtherContent, openPicture } from '../../../src/picture/open';
import type { Content } from '../../../src/shared/reader-protocol';

/** The bytes of what a reader is asked for; null where the file holds another content. */
export function bytesOf(content: Content): Buffer | null {
  try {
    const opened = openPicture(content);
    try {
      return opened.bytes();
    } finally {
      opened.close();
    }
  } catch (error) {
    if (error instanceof OtherContent) return null;
    throw error;
  }
}
