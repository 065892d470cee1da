package calendar

import (
	"slices"
	"time"

	"github.com/rickar/cal/v2"
	"github.com/rickar/cal/v2/at"
	"github.com/rickar/cal/v2/au"
	"github.com/rickar/cal/v2/be"
	"github.com/rickar/cal/v2/bg"
	"github.com/rickar/cal/v2/br"
	"github.com/rickar/cal/v2/ca"
	"github.com/rickar/cal/v2/ch"
	"github.com/rickar/cal/v2/cz"
	"github.com/rickar/cal/v2/de"
	"github.com/rickar/cal/v2/dk"
	"github.com/rickar/cal/v2/es"
	"github.com/rickar/cal/v2/fr"
	"github.com/rickar/cal/v2/gb"
	"github.com/rickar/cal/v2/gr"
	"github.com/rickar/cal/v2/hr"
	"github.com/rickar/cal/v2/ie"
	"github.com/rickar/cal/v2/it"
	"github.com/rickar/cal/v2/jp"
	"github.com/rickar/cal/v2/lt"
	"github.com/rickar/cal/v2/lv"
	"github.com/rickar/cal/v2/nc"
	"github.com/rickar/cal/v2/nl"
	"github.com/rickar/cal/v2/no"
	"github.com/rickar/cal/v2/pl"
	"github.com/rickar/cal/v2/ro"
	"github.com/rickar/cal/v2/se"
	"github.com/rickar/cal/v2/si"
	"github.com/rickar/cal/v2/sk"
	"github.com/rickar/cal/v2/us"
	"github.com/rickar/cal/v2/za"
)

// lists maps each code to its holidays. A list is offered when it is not known
// to lack a holiday on a working day, or to have one on a wrong day: a day too
// many only delays a parcel, a day too few leaves it lying. Left out by that
// measure are
//   - ar (Good Friday a day early), mw (no Muslim feasts), nz (no Matariki), ru
//     (no 2 to 6 January), ua (feasts not moved in 2023);
//   - gb-sct and gb-nir, which have no list, and ch and au as a whole, since
//     their cantons and states differ;
//   - ch-ai, ch-fr, ch-ge, ch-gl, ch-ju, ch-lu, ch-ne, ch-nw, ch-ow, ch-so, ch-ti,
//     ch-vd, ch-vs and ch-zg (cantonal days or Easter Monday missing).
//
// What is mended here names its law; all of that is from memory.
var lists = map[string][]*cal.Holiday{
	"at":     at.Holidays,
	"au-act": au.HolidaysACT,
	"au-nsw": with(au.HolidaysNSW, anzacMonday2026, anzacMonday2027),
	"au-nt":  au.HolidaysNT,
	"au-qld": au.HolidaysQLD,
	"au-sa":  au.HolidaysSA,
	"au-tas": au.HolidaysTAS,
	"au-vic": au.HolidaysVIC,
	"au-wa":  au.HolidaysWA,
	"be":     be.Holidays,
	"bg":     bg.Holidays,
	"br":     with(br.Holidays, conscienciaNegra),
	"ca":     ca.Holidays,
	"ch-ag":  ch.HolidaysAG,
	"ch-ar":  ch.HolidaysAR,
	"ch-be":  ch.HolidaysBE,
	"ch-bl":  ch.HolidaysBL,
	"ch-bs":  ch.HolidaysBS,
	"ch-gr":  ch.HolidaysGR,
	"ch-sg":  ch.HolidaysSG,
	"ch-sh":  ch.HolidaysSH,
	"ch-sz":  ch.HolidaysSZ,
	"ch-tg":  ch.HolidaysTG,
	"ch-ur":  ch.HolidaysUR,
	"ch-zh":  ch.HolidaysZH,
	"cz":     cz.Holidays,
	"de":     de.Holidays,
	"de-bb":  de.HolidaysBB,
	"de-be":  with(de.HolidaysBE, befreiung2025, volksaufstand2028),
	"de-bw":  de.HolidaysBW,
	"de-by":  with(de.HolidaysBY, de.MariaHimmelfahrt), // Art. 1 FTG: in most communes, those mainly Catholic
	"de-hb":  de.HolidaysHB,
	"de-he":  de.HolidaysHE,
	"de-hh":  de.HolidaysHH,
	"de-mv":  with(de.HolidaysMV, frauentagMV),
	"de-ni":  de.HolidaysNI,
	"de-nw":  de.HolidaysNW,
	"de-rp":  de.HolidaysRP,
	"de-sh":  de.HolidaysSH,
	"de-sl":  de.HolidaysSL,
	"de-sn":  de.HolidaysSN,
	"de-st":  de.HolidaysST,
	"de-th":  de.HolidaysTH,
	"dk":     dk.Holidays,
	"es":     es.Holidays,
	"fr":     fr.Holidays,
	"gb":     gb.Holidays,
	"gb-eng": gb.Holidays,
	"gb-wls": gb.Holidays,
	"gr":     gr.Holidays,
	"hr":     hr.Holidays,
	"ie":     ie.Holidays,
	"it":     with(it.Holidays, sanFrancesco),
	"jp":     jp.Holidays,
	"lt":     lt.Holidays,
	"lv":     lv.Holidays,
	"nc":     nc.Holidays,
	"nl":     nl.Holidays,
	"no":     no.Holidays,
	"pl":     with(pl.Holidays, wigilia),
	"ro":     with(ro.Holidays, boboteaza, sfantulIoan),
	"se":     se.Holidays,
	"si":     si.Holidays,
	"sk":     sk.Holidays,
	"us":     us.Holidays,
	"za":     za.Holidays,
}

// renamed are names in the lists that are no longer, or never were, right.
var renamed = map[string]string{
	"Queen's Birthday": "King's Birthday",
	"Xristougenna":     "Πρωτοχρονιά", // New Year under the name of Christmas
}

// Holidays that the lists lack.
var (
	// Berlin, Gesetz über die Sonn- und Feiertage: two anniversaries.
	befreiung2025     = onceOn("Tag der Befreiung", 2025, time.May, 8)
	volksaufstand2028 = onceOn("Jahrestag des Volksaufstandes in der DDR", 2028, time.June, 17)
	// Mecklenburg-Vorpommern, Feiertagsgesetz, since 2023.
	frauentagMV = since("Frauentag", 2023, time.March, 8)
	// New South Wales, orders of the government of 2025.
	anzacMonday2026 = onceOn("Additional day for ANZAC Day", 2026, time.April, 27)
	anzacMonday2027 = onceOn("Additional day for ANZAC Day", 2027, time.April, 26)
	// Brazil, Lei 14.759 of 2023.
	conscienciaNegra = since("Dia Nacional de Zumbi e da Consciência Negra", 2024, time.November, 20)
	// Italy, Legge 151 of 2025.
	sanFrancesco = since("San Francesco d'Assisi", 2026, time.October, 4)
	// Poland, law of 6 December 2024.
	wigilia = since("Wigilia Bożego Narodzenia", 2025, time.December, 24)
	// Romania, Legea 52 of 2023.
	boboteaza   = since("Botezul Domnului", 2024, time.January, 6)
	sfantulIoan = since("Soborul Sfântului Ioan Botezătorul", 2024, time.January, 7)
)

func since(name string, year int, month time.Month, day int) *cal.Holiday {
	return &cal.Holiday{Name: name, StartYear: year, Month: month, Day: day, Func: cal.CalcDayOfMonth}
}

func onceOn(name string, year int, month time.Month, day int) *cal.Holiday {
	h := since(name, year, month, day)
	h.EndYear = year
	return h
}

// with gives list and more in a slice of its own.
func with(list []*cal.Holiday, more ...*cal.Holiday) []*cal.Holiday {
	return slices.Concat(list, more)
}
