import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { frameDiagram } from '#lib/ui/frame/frame-diagram.ts';

/** Put into the page when the student wishes to frame a diagram: it draws the frame, then asks for the slip. */
export default defineUnlistedScript(() => {
  // The answer that the script went in must not wait for the student.
  void frameDiagram(document);
  return true;
});
