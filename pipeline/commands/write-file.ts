import { mkdir, writeFile as write } from 'node:fs/promises';
import { dirname } from 'node:path';
import { UserError } from '../user-error.ts';

/**
 * Writes one file, making its folder where it is not there.
 *
 * @throws UserError `not_writable` where the place can't be written
 */
export async function writeFile(path: string, content: string | Uint8Array): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true });
    await write(path, content);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    throw new UserError(
      'not_writable',
      `${path}: must be a file that can be written, found ${code} (${message})`,
    );
  }
}
