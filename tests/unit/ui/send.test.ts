import { beforeEach, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import { StudentError } from '#lib/model/student-error.ts';
import { send } from '#lib/ui/send.ts';
import { answerWith, fakeExtension } from './fake-extension.ts';

beforeEach(() => fakeExtension());

const change = { clipId: crypto.randomUUID(), topicIds: [], ownWords: 'They outrun them.', unclear: false };

test('a message goes out by its name, and its answer comes back', async () => {
  const came = answerWith(() => ({ ok: true, value: { clipId: 'it' } }));
  expect(await send('changeClip', change)).toEqual({ clipId: 'it' });
  expect(came).toEqual([{ name: 'changeClip', data: change }]);
});

test('an error that the background met is thrown here with its values', async () => {
  answerWith(() => ({ ok: false, error: 'errorFieldWrong', values: ['ownWords', 'too long'] }));
  const refused = send('changeClip', change);
  await expect(refused).rejects.toBeInstanceOf(StudentError);
  await expect(refused).rejects.toMatchObject({
    message: 'errorFieldWrong',
    values: ['ownWords', 'too long'],
  });
});

test.each([undefined, null])('the answer %s asks to reload the page', async (nothing) => {
  answerWith(() => nothing);
  await expect(send('changeClip', change)).rejects.toMatchObject({ message: 'errorReloadPage' });
});

test('so does an extension that is gone', async () => {
  vi.spyOn(fakeBrowser.runtime, 'sendMessage').mockImplementation(() => {
    throw new Error('Extension context invalidated.');
  });
  await expect(send('openDesk', { path: 'course' })).rejects.toMatchObject({ message: 'errorReloadPage' });
});

test('so does a background where nobody listens', async () => {
  await expect(send('openDesk', { path: 'course' })).rejects.toMatchObject({ message: 'errorReloadPage' });
});
