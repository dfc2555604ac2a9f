import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script';
import { PICTURES_KEY } from '#lib/capture/pictures/reader.ts';
import { passagePictures } from '#lib/ui/frame/passage-pictures.ts';

/** Put into the page when what is selected holds pictures: it leaves the function that reads them to the clip script. */
export default defineUnlistedScript(() => {
  Object.assign(globalThis, { [PICTURES_KEY]: passagePictures });
  return true;
});
