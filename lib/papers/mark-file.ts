import { z } from 'zod';
import { Id, Millis } from '#lib/model/basics.ts';
import { Mark } from '#lib/model/mark.ts';
import { Paper } from '#lib/model/paper.ts';
import { PictureDraft } from '#lib/model/picture.ts';
import { Sitting, SittingEvent, TypedAnswer } from '#lib/model/sitting.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { Topic } from '#lib/model/topic.ts';

/** What tells a mark file from any other JSON. */
export const MARK_FILE_FORMAT = 'plumbline-mark-file';

/** The version of the format. It grows when an older Plumbline could misread a file. */
export const MARK_FILE_VERSION = 1;

/** The heaviest file that is read as a mark file, in bytes. */
export const HEAVIEST_MARK_FILE = 100_000_000;

/** What the file hands out to be marked, and nobody changes on the way. */
export const Sealed = z.object({
  paper: Paper,
  /** Topics of the paper's parts, by name, for whoever has not the course. */
  topics: z.array(Topic.pick({ id: true, code: true, title: true })).max(5000),
  /** Pictures of the paper by their ids. */
  pictures: z.record(Id, PictureDraft),
  sitting: Sitting,
  events: z.array(SittingEvent).max(10_000),
  /** Empty where the answers are on paper. */
  answers: z.array(TypedAnswer).max(1000),
});
export type Sealed = z.infer<typeof Sealed>;

const isOwn = (file: { sealed: Sealed; marks: readonly { sittingId: string }[] }): boolean => {
  const { paper, sitting, events, answers } = file.sealed;
  return (
    sitting.paperId === paper.id &&
    [...events, ...answers, ...file.marks].every(({ sittingId }) => sittingId === sitting.id)
  );
};

/** A sitting on its way to someone who marks it, and back with marks and remarks. */
export const MarkFile = z
  .object({
    format: z.literal(MARK_FILE_FORMAT),
    version: z.literal(MARK_FILE_VERSION),
    savedAt: Millis,
    /** What the student wrote for a name; empty where nothing. */
    student: z.string().max(200),
    sealed: Sealed,
    /** SHA-256 of sealedText(sealed), as 64 hexadecimal digits. */
    digest: z.string().regex(/^[0-9a-f]{64}$/),
    /** All marks that were given so far, those that were replaced among them. */
    marks: z.array(Mark).max(10_000),
  })
  .refine(isOwn, { message: 'of two sittings', path: ['sealed', 'sitting'] });
export type MarkFile = z.infer<typeof MarkFile>;

/** SHA-256 of a text's UTF-8 octets, as 64 hexadecimal digits: the shell's, since the domain knows no browser. */
export type Digest = (text: string) => Promise<string>;

/** What the digest is taken of: the same for the same content, whatever the order of its keys. */
export const sealedText = (sealed: Sealed): string => JSON.stringify(sorted(sealed));

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, part]) => [key, sorted(part)]));
}

/** The text of a mark file. */
export async function writeMarkFile(
  content: Pick<MarkFile, 'savedAt' | 'student' | 'sealed' | 'marks'>,
  digest: Digest,
): Promise<string> {
  const sealed = Sealed.parse(content.sealed);
  const file: MarkFile = {
    format: MARK_FILE_FORMAT,
    version: MARK_FILE_VERSION,
    ...content,
    sealed,
    digest: await digest(sealedText(sealed)),
  };
  return JSON.stringify(MarkFile.parse(file));
}

const Head = z.looseObject({ format: z.literal(MARK_FILE_FORMAT), version: z.number() });

/**
 * Reads the text of a file as a mark file.
 * Errors: StudentError `errorMarkFileDamaged` where the text ends early or is no JSON though it began as a mark file,
 * `errorMarkFileNone` where it is something else, `errorMarkFileNewer` for a later version of the format,
 * `errorMarkFileWrong` naming the first place that does not fit, `errorMarkFileChanged` where paper, sitting or answers
 * are not what was sealed.
 */
export async function readMarkFile(text: string, digest: Digest): Promise<MarkFile> {
  let value: unknown;
  try {
    // A key of this name would reach for what every object inherits from.
    value = JSON.parse(text, (key, part: unknown) => (key === '__proto__' ? undefined : part));
  } catch {
    throw new StudentError(
      text.includes(`"${MARK_FILE_FORMAT}"`) ? 'errorMarkFileDamaged' : 'errorMarkFileNone',
    );
  }
  const head = Head.safeParse(value);
  if (!head.success) throw new StudentError('errorMarkFileNone');
  if (head.data.version > MARK_FILE_VERSION) throw new StudentError('errorMarkFileNewer');
  const file = MarkFile.safeParse(value);
  if (!file.success) {
    const { path, message } = file.error.issues[0]!;
    throw new StudentError('errorMarkFileWrong', path.join('.'), message);
  }
  if ((await digest(sealedText(file.data.sealed))) !== file.data.digest)
    throw new StudentError('errorMarkFileChanged');
  return file.data;
}
