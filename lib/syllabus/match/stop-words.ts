/** English words that carry no subject. Source: common practice; closed word classes and a textbook's own asides. */
const STOP = `about above after again against all almost along already also although always am among an and another any
  are around as at away back be became because become becomes been before began behind being below between both but
  by came can cannot come could did do does doing don done down during each either else end enough etc even ever
  every few first following for from further gave get give given gives go goes going got had has have having he
  hence her here him his how however if in indeed instead into is isn it its itself just last least less let like
  likely made many may me might mine more most much must my near need needs neither next no none nor not nothing now
  of off often on once one only onto or other others our out over own per perhaps put quite rather really same saw
  say says second see seen several shall she should simply since so some something still such take taken than that
  the their them themselves then there therefore these they third this those though through thus to together too
  toward towards two under until up upon us used useful uses using usually very via want was way ways we well went
  were what when where whether which while who whole whose why will with within without would yet you your able
  candidate candidates chapter course example examples figure learner learners lesson lessons page section sections
  shown shows student students table topic topics unit units`;

export const STOP_WORDS: ReadonlySet<string> = new Set(STOP.split(/\s+/));
