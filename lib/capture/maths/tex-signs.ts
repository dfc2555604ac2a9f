/** TeX commands of letters and signs, each followed by its character. */
const COMMANDS =
  'alpha α beta β gamma γ delta δ epsilon ϵ varepsilon ε zeta ζ eta η theta θ vartheta ϑ iota ι kappa κ varkappa ϰ ' +
  'lambda λ mu μ nu ν xi ξ pi π varpi ϖ rho ρ varrho ϱ sigma σ varsigma ς tau τ upsilon υ phi ϕ varphi φ chi χ psi ψ ' +
  'omega ω Gamma Γ Delta Δ Theta Θ Lambda Λ Xi Ξ Pi Π Sigma Σ Upsilon Υ Phi Φ Psi Ψ Omega Ω ' +
  'hbar ℏ ell ℓ wp ℘ Re ℜ Im ℑ aleph ℵ imath ı jmath ȷ partial ∂ nabla ∇ infty ∞ emptyset ∅ forall ∀ exists ∃ ' +
  'nexists ∄ neg ¬ top ⊤ bot ⊥ angle ∠ triangle △ degree ° ' +
  'pm ± mp ∓ times × div ÷ cdot ⋅ ast ∗ star ⋆ circ ∘ bullet ∙ oplus ⊕ ominus ⊖ otimes ⊗ odot ⊙ wedge ∧ vee ∨ ' +
  'cap ∩ cup ∪ uplus ⊎ setminus ∖ dagger † ddagger ‡ amalg ⨿ wr ≀ diamond ⋄ ' +
  'leq ≤ geq ≥ neq ≠ approx ≈ equiv ≡ sim ∼ simeq ≃ cong ≅ propto ∝ ll ≪ gg ≫ prec ≺ succ ≻ preceq ⪯ succeq ⪰ ' +
  'in ∈ notin ∉ ni ∋ subset ⊂ supset ⊃ subseteq ⊆ supseteq ⊇ perp ⟂ models ⊨ vdash ⊢ dashv ⊣ asymp ≍ doteq ≐ ' +
  'lesssim ≲ gtrsim ≳ trianglelefteq ⊴ ' +
  'to → leftarrow ← leftrightarrow ↔ Rightarrow ⇒ Leftarrow ⇐ Leftrightarrow ⇔ mapsto ↦ uparrow ↑ downarrow ↓ ' +
  'updownarrow ↕ Uparrow ⇑ Downarrow ⇓ nearrow ↗ searrow ↘ swarrow ↙ nwarrow ↖ longrightarrow ⟶ longleftarrow ⟵ ' +
  'Longrightarrow ⟹ Longleftarrow ⟸ Longleftrightarrow ⟺ longleftrightarrow ⟷ longmapsto ⟼ hookrightarrow ↪ ' +
  'hookleftarrow ↩ rightharpoonup ⇀ leftharpoonup ↼ rightleftharpoons ⇌ rightleftarrows ⇄ ' +
  'sum ∑ prod ∏ coprod ∐ int ∫ iint ∬ iiint ∭ oint ∮ oiint ∯ bigcap ⋂ bigcup ⋃ bigvee ⋁ bigwedge ⋀ bigoplus ⨁ ' +
  'bigotimes ⨂ bigodot ⨀ ' +
  'langle ⟨ rangle ⟩ lfloor ⌊ rfloor ⌋ lceil ⌈ rceil ⌉ ldots … cdots ⋯ vdots ⋮ ddots ⋱ therefore ∴ because ∵ ' +
  'square □ blacksquare ■ frown ⌢ smile ⌣ sharp ♯ flat ♭ natural ♮ colon :';

export const COMMAND_OF: ReadonlyMap<string, string> = new Map(
  COMMANDS.split(' ').flatMap((word, index, words) =>
    index % 2 ? [[word, words[index - 1]!] as const] : [],
  ),
);
/** Characters with a meaning of their own in TeX, and signs that TeX writes in another way. */
const WRITTEN: Readonly<Record<string, string>> = {
  '\u2212': '-',
  '\u2217': '*',
  '\u2032': "'",
  '\u2033': "''",
  '\u2034': "'''",
  '\u2016': '\\|',
  '\u2225': '\\parallel',
  '\u2223': '\\mid',
  '\u2206': '\\Delta',
  '\u00b7': '\\cdot',
  '\u00b5': '\\mu',
  ':': ':',
  '{': '\\{',
  '}': '\\}',
  '%': '\\%',
  '&': '\\&',
  '#': '\\#',
  $: '\\$',
  _: '\\_',
  '\\': '\\backslash',
  '~': '\\sim',
  '^': '\\text{\\textasciicircum}',
};

/** Functions that TeX has a command for. */
const FUNCTIONS: ReadonlySet<string> = new Set(
  (
    'arccos arcsin arctan arg cos cosh cot coth csc deg det dim exp gcd hom inf ker lg lim liminf limsup ln log max ' +
    'min Pr sec sin sinh sup tan tanh'
  ).split(' '),
);

/** A letter or sign as TeX. */
export function signAsTex(char: string): string {
  const written = Object.hasOwn(WRITTEN, char) ? WRITTEN[char] : undefined;
  if (written !== undefined) return written;
  const command = COMMAND_OF.get(char);
  return command ? `\\${command}` : char;
}

/** A function's command; null for a word that is none. */
export function functionAsTex(word: string): string | null {
  const name = word.replace(/\s/g, '');
  return FUNCTIONS.has(name) ? `\\${name}` : null;
}

/** Commands that set letters in a style. */
export const STYLE_COMMANDS: Readonly<Record<string, string>> = {
  normal: '\\mathrm',
  bold: '\\mathbf',
  italic: '\\mathit',
  'bold-italic': '\\boldsymbol',
  script: '\\mathcal',
  'bold-script': '\\mathbfcal',
  fraktur: '\\mathfrak',
  'bold-fraktur': '\\mathbffrak',
  'double-struck': '\\mathbb',
  'sans-serif': '\\mathsf',
  'bold-sans-serif': '\\mathbfsf',
  'sans-serif-italic': '\\mathsfit',
  'sans-serif-bold-italic': '\\mathbfsfit',
  monospace: '\\mathtt',
};

/** The same for text. */
export const TEXT_STYLES: Readonly<Record<string, string>> = {
  bold: '\\textbf',
  italic: '\\textit',
  'sans-serif': '\\textsf',
  monospace: '\\texttt',
};

/** Accents above and below, by the sign that stands for all of its forms (./operators.ts): over one letter, over more. */
export const OVER: Readonly<Record<string, readonly [string, string]>> = {
  '\u02c6': ['\\hat', '\\widehat'],
  '\u02dc': ['\\tilde', '\\widetilde'],
  '\u00af': ['\\bar', '\\overline'],
  '\u2192': ['\\vec', '\\overrightarrow'],
  '\u2190': ['\\overleftarrow', '\\overleftarrow'],
  '\u2194': ['\\overleftrightarrow', '\\overleftrightarrow'],
  '\u02d9': ['\\dot', '\\dot'],
  '\u00a8': ['\\ddot', '\\ddot'],
  '\u00b4': ['\\acute', '\\acute'],
  '`': ['\\grave', '\\grave'],
  '\u02c7': ['\\check', '\\widecheck'],
  '\u02d8': ['\\breve', '\\breve'],
  '\u23de': ['\\overbrace', '\\overbrace'],
  '\u23b4': ['\\overbracket', '\\overbracket'],
};
export const UNDER: Readonly<Record<string, string>> = {
  '\u00af': '\\underline',
  '\u23df': '\\underbrace',
  '\u23b5': '\\underbracket',
  '\u2192': '\\underrightarrow',
  '\u2190': '\\underleftarrow',
};
