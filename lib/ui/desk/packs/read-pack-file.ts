import { type CoursePack, HEAVIEST_PACK, readPack } from '#lib/exchange/course-pack.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { decodeText } from '#lib/syllabus/bring-in/decode-text.ts';
import { sizeText } from '../../pdf/pdf-file.ts';

/**
 * Reads a file as a course pack. A file that is too heavy is not opened.
 * Errors: those of readPack; StudentError `errorPackHeavy`.
 */
export async function readPackFile(file: File): Promise<CoursePack> {
  if (file.size > HEAVIEST_PACK)
    throw new StudentError('errorPackHeavy', sizeText(file.size), sizeText(HEAVIEST_PACK));
  return readPack(decodeText(new Uint8Array(await file.arrayBuffer())));
}
