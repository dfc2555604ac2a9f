import { expect, test } from 'vitest';
import { StudentError } from '#lib/model/student-error.ts';
import { leaveSubject, takeSubject } from '#lib/ui/frame/left-subject.ts';
import type { Subject } from '#lib/ui/slip/subject.ts';

const subject = { headings: [] } as unknown as Subject;

test('what is left is taken once, as it is', async () => {
  await leaveSubject(async () => subject);
  expect(takeSubject()).toBe(subject);
  expect(takeSubject).toThrow('errorReloadPage');
});

test('an error goes along by its name, with its values', async () => {
  await leaveSubject(() => Promise.reject(new StudentError('errorTimeLate', '1:05')));
  expect(takeSubject).toThrow(expect.objectContaining({ message: 'errorTimeLate', values: ['1:05'] }));
});

test('so does one that nobody foresaw', async () => {
  await leaveSubject(() => Promise.reject(new TypeError('no such thing')));
  expect(takeSubject).toThrow(
    expect.objectContaining({ message: 'errorUnexpected', values: ['TypeError: no such thing'] }),
  );
});
