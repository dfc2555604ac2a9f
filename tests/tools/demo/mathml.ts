/** Small builders for native MathML, so that a page's source stays readable. */
const tag = (name: string, ...children: string[]): string => `<${name}>${children.join('')}</${name}>`;

export const mi = (name: string): string => tag('mi', name);
export const mn = (value: string | number): string => tag('mn', String(value));
export const mo = (sign: string): string => tag('mo', sign);
export const row = (...children: string[]): string => tag('mrow', ...children);
export const frac = (over: string, under: string): string => tag('mfrac', over, under);
export const sub = (base: string, below: string): string => tag('msub', base, below);
export const sup = (base: string, above: string): string => tag('msup', base, above);
export const subsup = (base: string, below: string, above: string): string =>
  tag('msubsup', base, below, above);
export const sqrt = (...children: string[]): string => tag('msqrt', ...children);

/** An upright d, as in a derivative or an integral. */
export const diff = '<mi mathvariant="normal">d</mi>';
export const gap = '<mspace width="0.167em"></mspace>';
export const unit = (name: string): string => `${gap}<mtext>${name}</mtext>`;
export const paren = (...children: string[]): string => row(mo('('), ...children, mo(')'));
/** A named function and its argument. */
export const fn = (name: string, ...argument: string[]): string => row(mi(name), mo('&#x2061;'), ...argument);

const MATHML = 'http://www.w3.org/1998/Math/MathML';
export const inline = (...children: string[]): string => `<math xmlns="${MATHML}">${row(...children)}</math>`;
export const block = (...children: string[]): string =>
  `<math xmlns="${MATHML}" display="block">${row(...children)}</math>`;
