import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { lendDrawingReader } from '#lib/capture/maths/drawing-reader.ts';
import { readDrawing } from '#lib/capture/maths/drawn-maths.ts';

/** Put into a page with formulas that are only drawn: it leaves the function that reads them to the clip script. */
export default defineUnlistedScript(() => {
  lendDrawingReader(readDrawing);
  return true;
});
