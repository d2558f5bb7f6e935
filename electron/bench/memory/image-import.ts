/** Takes an image file in pieces and into the vault once all of it is there. */
import { checkImageFile } from '../../../core/image/check-image-file.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Request } from '../../../shared/contract.ts';
import type { Vault, VaultEntry } from '../../store/image-vault.ts';

const MOST_BYTES = 64 * 1024 * 1024;
const MOST_UPLOADS = 4;
const BASE64 = /^[A-Za-z0-9+/]*={0,2}$/u;

export class ImageImport {
  readonly #vault: Pick<Vault, 'keep'>;
  readonly #now: () => Date;
  readonly #uploads = new Map<string, Buffer[]>();

  constructor(vault: Pick<Vault, 'keep'>, now: () => Date) {
    this.#vault = vault;
    this.#now = now;
  }

  /** Null until the last piece has come. After a problem the upload is over. */
  async take({ upload, name, piece, last }: Request<'images.import'>): Promise<Result<VaultEntry | null>> {
    const pieces = this.#uploads.get(upload) ?? [];
    if (!this.#uploads.has(upload) && this.#uploads.size >= MOST_UPLOADS)
      return failed('import-busy', 'Several images are being taken in already; wait until they are done.');
    this.#uploads.set(upload, pieces);
    if (BASE64.test(piece)) pieces.push(Buffer.from(piece, 'base64'));
    else return this.#end(upload, 'import-damaged', 'A piece of the image came damaged; take it in once more.');
    if (pieces.reduce((sum, { length }) => sum + length, 0) > MOST_BYTES)
      return this.#end(upload, 'image-too-large', 'The file is larger than 64 MiB; check that it is a memory image.');
    if (!last) return done(null);
    this.#uploads.delete(upload);
    const image = new Uint8Array(Buffer.concat(pieces));
    const unfit = checkImageFile(image);
    if (unfit !== null) return { ok: false, problem: unfit };
    return this.#vault.keep(image, `taken in from ${ownName(name)}`, null, this.#now());
  }

  #end(upload: string, code: string, says: string): Result<never> {
    this.#uploads.delete(upload);
    return failed(code, says);
  }
}

/** The file's own name without folders. */
function ownName(name: string): string {
  return name.split(/[/\\]/u).at(-1) || 'a file';
}
