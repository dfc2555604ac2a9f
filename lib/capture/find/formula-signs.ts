/** Signs that give a formula away, plain TeX or typeset. */
export const FORMULA = /[\\=^_{}\u2061-\u2064\u2200-\u22ff]|\ud835/;
