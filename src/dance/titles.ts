/**
 * The texts that the facts about dances rest on, written out for a reader who wants to look one up.
 * Read as extracts, not as whole documents; "undated" where the text shows no date.
 */
export const titles = {
  dtvRules:
    'DTV Turnier- und Sportordnung (German DanceSport federation), tempo table, state 05/2023 (schwarz-weiss-rt.de)',
  pttRules: 'Polish Dance Association (PTT), rules extract, undated (unitron.aplus.pl)',
  wdoRules: 'World Dance Organisation championship rules, undated (islds.com)',
  ndcaAmerican: 'NDCA recommended tempi, American style, undated (centralhome.com)',
  ndcaInternational: 'NDCA recommended tempi, International style, undated (centralhome.com)',
  usistdAmerican: 'USISTD syllabus, American style waltz (usistd.org)',
  danceFaq: 'rec.arts.dance FAQ, ed. V. Eijkhout, 1994–2000 (eijkhout.net)',
  // Second-hand for the IDTA's books, with typing slips of its own.
  idtaCards: 'Student revision cards of IDTA Associate theory, undated (freezingblue.com)',
  // That Moore wrote it is remembered: the reproduction does not show its author.
  moore: 'Alex Moore, Questions and Answers for Ballroom Examinations (reproduced at dancepedia.info)',
  istdNotes: 'ISTD-derived notes on samba and paso doble (peddrossalsateca.in)',
  leadAndFollowFaq: 'rec.arts.dance lead-and-follow FAQ, music and timing (eijkhout.net)',
  lamberty: 'Richard Lamberty, Tango timing (haroldsears.com article archive)',
  urdcTango: 'URDC teaching sheet, Tango (docslib.org/download/8357204)',
  blackford: 'Wayne & Barbara Blackford, International Tango (haroldsears.com article archive)',
  finch: 'Sandi & Dan Finch, Where to put the & step (haroldsears.com article archive)',
  roundGlossary: 'Common Glossary of Round Dance Terms, Roundalab & URDC, Oct 2001 (docslib.org/doc/6934307)',
  tidBitsSplits: 'Dancing Tid-bits, newsletter by “Max”, nos. 3 and 7, 2000–2004 (dancesport.uk.com)',
  tidBitsRumba: 'Dancing Tid-bits, newsletter by “Max”, no. 41, 2000–2004 (dancesport.uk.com)',
  eumRumba: 'Tim Eum, Three advanced rumba figures (haroldsears.com article archive)',
  beatTwoFaq: 'FAQ 19, the 2 beat in rumba and cha-cha (kensclassictrax.co.uk)',
  chaChaText: 'Encyclopaedic text on cha-cha (emoney-easy.yolasite.com)',
} as const
