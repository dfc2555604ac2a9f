import { block, frac, mi, mn, mo, sqrt, sub, unit } from '../mathml.ts';
import type { Lesson } from '../types.ts';

const salt = sub(mi('m'), mi('s'));

/** A short page in a script that runs from right to left. */
export const salinityArabic: Lesson = {
  article: {
    path: '/far-shore/ar/salinity',
    site: 'far-shore',
    title: 'ملوحة ماء البحر',
    author: 'نورسان المرجاوي',
    published: '2024-03-18',
    markup: 'mathml',
    lang: 'ar',
    dir: 'rtl',
    lede: 'ما كتلة الأملاح في كيلوغرام واحد من ماء البحر؟',
    body: () => `<h2>التعريف</h2>
<div id="definition" lang="ar">
<p>الملوحة المطلقة هي كتلة الأملاح الذائبة مقسومة على كتلة ماء البحر:</p>
${block(mi('S'), mo('='), frac(salt, mi('m')))}
<p>وتقاس عادة بوحدة <bdi dir="ltr">g/kg</bdi>. وقيمتها المتوسطة في المحيط نحو <bdi dir="ltr">35 g/kg</bdi>.</p>
</div>
<h2>مثال</h2>
<p>في كيلوغرامين من ماء البحر ملوحته <bdi dir="ltr">35 g/kg</bdi> تكون كتلة الأملاح:</p>
${block(salt, mo('='), mn(35), mo('×'), mn(2), mo('='), mn(70), unit('g'))}
<ul><li>التبخر يزيد الملوحة.</li><li>المطر ومياه الأنهار تنقصها.</li></ul>`,
    aside: '<p>درس قصير للسنة الأولى.</p>',
  },
  study: {
    topicCode: '1.1',
    passageSelector: '#definition',
    ownWords:
      'Salinity = mass of dissolved salts ÷ mass of sea water, in g/kg; about 35 g/kg in the open ocean.',
    questions: [
      {
        prompt: 'Calculate the mass of salts in 2.0 kg of sea water with a salinity of 35 g/kg.',
        answer: '35 × 2.0 = 70 g',
        marks: 1,
      },
      {
        prompt: 'Name one process that raises the salinity of surface water and one that lowers it.',
        answer: 'Evaporation raises it; rain or river water lowers it.',
        marks: 2,
      },
    ],
    lines: [{ lead: 'The mean salinity of the ocean is about', rest: '35 g/kg.' }],
  },
};

/** A short page in Japanese. */
export const shallowWavesJapanese: Lesson = {
  article: {
    path: '/far-shore/ja/shallow-waves',
    site: 'far-shore',
    title: '浅い水の波',
    author: '潮見沢 ひらめ',
    published: '2024-04-02',
    markup: 'mathml',
    lang: 'ja',
    lede: '波長が水深よりずっと長いとき、波の速さは水深だけで決まる。',
    body: () => `<h2>速さの式</h2>
<div id="speed" lang="ja">
<p>水深を <i>h</i>、重力加速度を <i>g</i> とする。波長が水深の二十倍より長い波を<ruby>長波<rt>ちょうは</rt></ruby>といい、
その速さは次の式で与えられる。</p>
${block(mi('c'), mo('='), sqrt(mi('g'), mi('h')))}
<p>速さは波長によらないので、長波は分散しない。</p>
</div>
<h2>例</h2>
<p>水深 4000 m の海では、</p>
${block(mi('c'), mo('='), sqrt(mn('9.81'), mo('×'), mn(4000)), mo('≈'), mn(198), unit('m/s'))}
<p>となる。これは時速約 713 km に当たる。</p>`,
    aside: '<p>一年生のための短い授業。</p>',
  },
  study: {
    topicCode: '3.3',
    passageSelector: '#speed',
    ownWords:
      'Long waves (longer than 20 depths) go at √(gh), whatever their length, so they do not disperse.',
    questions: [
      {
        prompt: 'Why are shallow-water waves not dispersive?',
        answer: 'Their speed √(gh) does not depend on the wavelength.',
        marks: 1,
      },
      {
        prompt: 'Calculate the speed of a long wave where the sea is 4000 m deep, in km per hour.',
        answer: '√(9.81 × 4000) = 198 m s⁻¹, about 713 km/h.',
        marks: 2,
      },
    ],
    lines: [{ lead: 'A wave counts as long if its wavelength exceeds', rest: 'twenty times the depth.' }],
  },
};
