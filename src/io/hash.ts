import { createHash } from 'node:crypto';

/** SHA-256 of bytes or of a text's UTF-8, in lower-case hexadecimal. */
export const sha256 = (content: Uint8Array | string): string => createHash('sha256').update(content).digest('hex');
/** The six characters that are printed on every sheet. */
export const shortHash = (hash: string): string => hash.slice(0, 6);
