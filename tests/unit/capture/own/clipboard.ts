/**
 * What office programs put on the clipboard as text/html, written from memory of their output (none of it is taken from
 * a document or a test of theirs): the frame, the conditional comments, and the styles that matter are as they write
 * them; long style sheets are cut short.
 */

/** A word processor: its style sheet, numbered and dotted paragraphs, a table in a table, an equation with its picture. */
export const WORD = `<html xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office"
xmlns:w="urn:schemas-microsoft-com:office:word" xmlns:m="http://schemas.microsoft.com/office/2004/12/omml"
xmlns="http://www.w3.org/TR/REC-html40">
<head><meta http-equiv=Content-Type content="text/html; charset=utf-8"><meta name=ProgId content=Word.Document>
<!--[if gte mso 9]><xml><o:OfficeDocumentSettings><o:AllowPNG/></o:OfficeDocumentSettings></xml><![endif]-->
<!--[if gte mso 9]><xml><w:WordDocument><w:View>Normal</w:View><m:mathPr><m:mathFont m:val="Cambria Math"/></m:mathPr></w:WordDocument></xml><![endif]-->
<style><!-- /* Font Definitions */ @font-face {font-family:"Cambria Math";} p.MsoNormal {margin:0cm;} --></style>
<!--[if gte mso 10]><style>/* Style Definitions */ table.MsoNormalTable {mso-style-name:"Table Normal";}</style><![endif]-->
</head>
<body lang=EN-GB style='tab-interval:36.0pt'>
<!--StartFragment-->
<h2>Waves<o:p></o:p></h2>
<p class=MsoNormal><b style='mso-bidi-font-weight:normal'>Deep water</b> is deeper than half a wavelength, CO<sub>2</sub> apart.<o:p></o:p></p>
<p class=MsoListParagraphCxSpFirst style='text-indent:-18.0pt;mso-list:l0 level1 lfo1'><![if !supportLists]><span
style='font-family:Symbol'><span style='mso-list:Ignore'>·<span style='font:7.0pt "Times New Roman"'>&nbsp;&nbsp;&nbsp;&nbsp;</span></span></span><![endif]>Swell<o:p></o:p></p>
<p class=MsoListParagraphCxSpMiddle style='margin-left:72.0pt;mso-add-space:auto;mso-list:l0 level2 lfo1'><![if !supportLists]><span><span style='mso-list:Ignore'>o<span>&nbsp;&nbsp;</span></span></span><![endif]>from afar<o:p></o:p></p>
<p class=MsoListParagraphCxSpLast style='mso-list:l0 level1 lfo1'><![if !supportLists]><span><span style='mso-list:Ignore'>·<span>&nbsp;</span></span></span><![endif]>Wind sea<o:p></o:p></p>
<p class=MsoListParagraph style='mso-list:l1 level1 lfo2'><![if !supportLists]><span style='mso-list:Ignore'>1.<span>&nbsp;</span></span><![endif]>First<o:p></o:p></p>
<p class=MsoNormal>It runs at <!--[if gte msEquation 12]><m:oMath><i style='mso-bidi-font-style:normal'><span
style='font-family:"Cambria Math",serif'><m:r>c</m:r><m:r>=</m:r></span></i><m:rad><m:radPr><m:degHide m:val="on"/><span><m:ctrlPr></m:ctrlPr></span></m:radPr><m:deg></m:deg><m:e><m:f><m:fPr><span><m:ctrlPr></m:ctrlPr></span></m:fPr><m:num><i><span><m:r>g</m:r><m:r>λ</m:r></span></i></m:num><m:den><i><span><m:r>2π</m:r></span></i></m:den></m:f></m:e></m:rad></m:oMath><![endif]--><![if !msEquation]><span
style='font-size:11.0pt;position:relative;top:8.0pt'><!--[if gte vml 1]><v:shape id="_x0000_i1025" style='width:60pt'><v:imagedata src="file:///C:/Temp/clip_image001.png"/></v:shape><![endif]--><img width=80 height=40 src="file:///C:/Temp/msohtmlclip1/01/clip_image002.png"></span><![endif]>.<o:p></o:p></p>
<table class=MsoTableGrid border=1 style='border-collapse:collapse;mso-yfti-tbllook:1184'><tr style='mso-yfti-irow:0'><td width=100 valign=top style='border:solid windowtext 1.0pt'><p class=MsoNormal>Depth<o:p></o:p></p></td><td><table><tr><td><p class=MsoNormal>inner<o:p></o:p></p></td></tr></table></td></tr></table>
<p class=MsoNormal><!--[if gte vml 1]><v:shape style='width:100pt'><v:imagedata src="file:///C:/a.png"/></v:shape><![endif]--><![if !vml]><img width=133 height=88 src="file:///C:/Temp/msohtmlclip1/01/clip_image004.jpg" alt="Orbits of water"><![endif]><o:p></o:p></p>
<p class=MsoNormal><o:p>&nbsp;</o:p></p>
<!--EndFragment-->
</body></html>`;

const DOT =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

/** Another one: a doctype, fonts in their own elements, pictures and equations with their bytes. */
export const WRITER = `<!DOCTYPE html PUBLIC "-//W3C//DTD HTML 4.0 Transitional//EN">
<html><head><meta http-equiv="content-type" content="text/html; charset=utf-8"/><title></title><meta name="generator" content="Office (Linux)"/>
<style type="text/css">@page { size: 21cm 29.7cm; margin: 2cm } p { line-height: 115%; margin-bottom: 0.25cm }</style></head>
<body lang="en-GB" link="#000080" dir="ltr"><p style="line-height: 100%; margin-bottom: 0cm"><font face="Liberation Serif, serif"><font size="3"><b>Tides</b> come <span style="font-style: italic">twice</span> a day:</font></font></p>
<p><img src="${DOT}" name="Object1" alt="formula: T = 12.42 h" width="96" height="20"/></p>
<p>See <img src="${DOT}" name="Image1" align="bottom" width="300" height="200" border="0"/></p></body></html>`;

/** An editor in the browser: all of it in one bold element that is not bold, styles instead of elements. */
export const ONLINE = `<meta charset='utf-8'><b style="font-weight:normal;" id="docs-internal-guid-1"><p dir="ltr"><span style="font-size:11pt;font-weight:700;">Bold</span><span style="font-weight:400;"> and H</span><span style="vertical-align:sub;">2</span><span>O, m</span><span style="vertical-align:super;">2</span></p><img src="https://127.0.0.1/picture.png" alt="A chart"></b>`;

/** A spreadsheet: cells with formats, columns with widths. */
export const SHEET = `<html xmlns:x="urn:schemas-microsoft-com:office:excel"><head><meta name=ProgId content=Excel.Sheet><style><!--td {mso-number-format:General;}--></style></head><body>
<table border=0 cellpadding=0 width=128 style='border-collapse:collapse'><!--StartFragment--><col width=64 span=2 style='width:48pt'><tr height=20><td height=20 class=xl65 colspan=2>Tides</td></tr><tr height=20><td align=right x:num>1.5</td><td>m</td></tr><!--EndFragment--></table></body></html>`;
