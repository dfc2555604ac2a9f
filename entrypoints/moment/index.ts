import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { leaveSubject } from '#lib/ui/frame/left-subject.ts';
import { momentSubject } from '#lib/ui/moment/moment-subject.tsx';

/** Put into the page when a moment of its video is to be kept: it reads the moment and leaves it for the slip. */
export default defineUnlistedScript(async () => {
  await leaveSubject(() => momentSubject(document));
  return true;
});
