using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A caution and the pieces it fits.</summary>
internal sealed record CautionRule(Caution Caution, Func<CautionTraits, bool> Fits);

/// <summary>
/// The usual cautions, the most serious first, each with its source beside it. Rules change: a text names the authority
/// to ask and never says more than the source. Written in 2026; later changes are not in it.
/// </summary>
internal static class CautionTable
{
    private const CautionTime Buying = CautionTime.Buying;
    private const CautionTime Working = CautionTime.Working;
    private const CautionTime Selling = CautionTime.Selling;

    // Those that may cost a child's life or a lung are never cut down to a few words.
    private static readonly ImmutableHashSet<string> Grave =
        ["cribs", "asbestos", "nursery furniture", "bunk beds", "chests with latches"];

    public static ImmutableArray<CautionRule> Rules { get; } =
    [
        Rule(piece => piece.IsCrib, "cribs",
            "do not buy one to refinish", Buying | Selling, "US", SourceStatus.Published,
            "16 CFR 1219 and 1220; 75 FR 81766 (2010)",
            "Do not buy a crib or cot to refinish: in the US used cribs must meet the federal crib standards too, and "
            + "traditional drop-sides cannot be sold. Ask the CPSC; elsewhere ask your product safety authority."),
        Rule(piece => piece.IsMattress, "mattresses",
            "leave them alone unless you know the rules of your state", Buying | Selling, "US", SourceStatus.Published,
            "State law; 16 CFR 1633 (from 1 July 2007), by secondary sources",
            "Leave mattresses alone unless you know your state's rules: limits on selling used ones vary, and some "
            + "states ban it. Ask the state agency and the CPSC."),
        Rule(piece => piece.Says("asbestos", "insulation", "heat mat", "heat pad"), "asbestos",
            "do not sand or drill; leave the piece", Buying | Working, "all",
            SourceStatus.FromMemory, "EPA (US) and HSE (UK) guidance",
            "Old insulation, heat mats and some adhesives may hold asbestos: do not sand or drill them, leave the piece. "
            + "Ask the EPA in the US or the HSE in the UK."),
        Rule(piece => piece.IsForNursery && piece.IsDamagedOrUnknown, "nursery furniture",
            "do not sell it broken, wobbly or with a part missing", Buying | Selling, "US",
            SourceStatus.Published, "CPSC resale questions and answers",
            "Do not sell nursery furniture that is broken, wobbly or missing a part, even if it was never recalled. "
            + "Ask the CPSC."),
        Rule(piece => piece.IsBunkBed, "bunk beds",
            "check guardrails and openings against the rule first", Buying | Selling, "US", SourceStatus.FromMemory,
            "16 CFR 1213 and 1513 (2000)",
            "A bunk bed needs guardrails where its foundation is over 30 in high, and openings of at most 3.5 in. "
            + "Check the current rule with the CPSC before you buy one."),
        Rule(piece => piece.MayHaveLid, "chests with latches",
            "take off a latch that locks by itself, and fit a lid support", Buying | Selling, "US", SourceStatus.Published,
            "CPSC release of 5 March 2014; ASTM F963 (16 CFR 1250, from memory)",
            "If it has a lid: children have died shut inside such chests. Take off any latch that locks by itself, fit "
            + "a support that holds the lid open in any position, leave air holes, and look up what the CPSC says."),
        Rule(piece => piece.MayBeClothingStorage, "tip-over",
            "pass on an anchor kit with a note, and never say that it meets a standard", Selling, "US", SourceStatus.Published,
            "STURDY Act; 16 CFR 1261 (ASTM F2057-23); 88 FR 28403 (2023)",
            "Clothing storage from 27 in high, 30 lb and 3.2 cubic ft that was made after 1 September 2023 must meet the "
            + "US tip-over standard. For any age pass on an anchor kit with a note, never say that it complies, and ask "
            + "the CPSC."),
        Rule(piece => piece.MayTip, "tip-over",
            "pass on an anchor kit with a note", Selling, "all", SourceStatus.CommonPractice, "CPSC anchoring guidance",
            "Tall pieces can tip over: pass on an anchor kit with a note to fix it to the wall, and never imply that it "
            + "meets a standard."),
        Rule(piece => piece.MayBeOlderThan1978, "lead",
            "take old paint for lead until tested; no dry sanding", Buying | Working | Selling, "US", SourceStatus.Published,
            "16 CFR 1303 (paint rule since 1978); EPA pamphlets on safe work in old homes",
            "Paint on a piece that may be older than 1978 is lead-suspect: have it tested; no dry power-sanding, work "
            + "wet with a HEPA vacuum, and keep children away. Ask the EPA or the state health department."),
        Rule(piece => !piece.MayBeOlderThan1978 && !piece.IsMattress, "lead",
            "test old paint before you sand", Working, "US", SourceStatus.Published,
            "16 CFR 1303 (paint rule since 1978); EPA pamphlets on safe work in old homes",
            "If it has old paint of unknown age, test it for lead before you sand. Ask the EPA or the state health "
            + "department."),
        Rule(piece => piece.IsBuiltIn, "lead",
            "ask the EPA or the state before paid work in a home", Working, "US", SourceStatus.FromMemory,
            "EPA renovation rule (RRP), 73 FR 21692 (2008)",
            "Paid work on fixed cabinets or in a client's home built before 1978 may fall under the EPA's renovation "
            + "rule. Ask the EPA or the state before you take the job."),
        Rule(piece => piece.Says("strip", "stripped", "stripping", "stripper", "paint remover"), "paint strippers",
            "read the label; methylene chloride is not for consumers", Working, "US", SourceStatus.Published,
            "84 FR 11420 (2019); 89 FR 39254 (2024); 40 CFR 751 subpart B",
            "Methylene chloride strippers may not be sold to consumers in the US, and a paid refinisher is bound by the "
            + "rules for businesses. Read the label and ask the EPA, also about other solvents."),
        Rule(piece => piece.HasOilFinish, "rags",
            "dry oily rags flat outdoors, never in a pile", Working, "all", SourceStatus.Published,
            "Fire marshals' and insurers' notes (secondary sources)",
            "Rags with drying oil can catch fire by themselves: spread them flat outdoors or keep them under water in a "
            + "lidded metal can, never in a pile. Follow the label and ask the local fire department."),
        Rule(piece => piece.Says("shellac", "french polish", "alcohol", "mineral spirits", "white spirit", "lacquer"),
            "solvents", "no flames or sparks, plenty of air", Working, "US", SourceStatus.Published,
            "Safety data sheet of a shellac (2023); NFPA 30 classes (secondary source)",
            "Alcohol and spirit finishes give off flammable vapour: no flames, pilot lights or sparks, and plenty of "
            + "air. Read the safety data sheet and ask the fire authority."),
        Rule(piece => piece.IsElectric, "electrics",
            "have a qualified electrician test it", Selling, "UK and US", SourceStatus.Published,
            "UK Trading Standards leaflet; 16 CFR 1263 for button cells (from memory)",
            "Anything with a plug, wires or a button cell must be safe to sell: have a qualified electrician test it, "
            + "and sell none with taped joints. Ask Trading Standards in the UK or the CPSC in the US."),
        Rule(piece => piece.IsUpholstered || piece.IsMattress || piece.Says(
                "mould", "mouldy", "mold", "moldy", "musty", "odor", "odour", "smell", "smoke", "woodworm", "damp"),
            "mould and smell", "refuse mold, a strong smell, smoke or live woodworm",
            Buying, "all", SourceStatus.CommonPractice, "What careful buyers do",
            "Refuse padded or porous pieces with mould, a strong smell, smoke or live woodworm, and keep a doubtful one "
            + "apart from the others. Ask public health where mould is heavy."),
        Rule(piece => piece.MayBePadded || piece.IsFromBedroom, "pests",
            "look for bed bugs outdoors, before you load it", Buying, "all", SourceStatus.Published,
            "EPA advice (secondary source); Connecticut, Best Practices for Bed Bug Management (2011)",
            "Look for bed bugs in seams, joints, drawers and screw holes, outdoors, before you load it. Ask the local "
            + "health department."),
        Rule(piece => piece.MayBePadded, "upholstery",
            "a new seat cover falls under the flammability rule", Working | Selling, "US", SourceStatus.Published,
            "16 CFR 1640 (TB 117-2013); 86 FR 18440 (2021)",
            "If you reupholster a seat, the US flammability rule and its permanent label apply to you (work done since "
            + "25 June 2021, label since 25 June 2022). Ask the CPSC."),
        Rule(piece => piece.IsUpholstered || piece.IsMattress, "upholstery tags",
            "ask the state agency before you sell", Selling, "US states",
            SourceStatus.Published, "Conn. Regs 21a-235-14; NY General Business Law 389-a; Utah R70-101-16",
            "Some states want used upholstery and bedding sanitised and tagged. Ask the state agency before you sell."),
        Rule(piece => piece.MayBePadded || piece.IsMattress, "upholstery",
            "in the UK look for the permanent fire label", Buying | Selling, "UK",
            SourceStatus.Published, "SI 1988/1324, amended by SI 2025/531 (30 October 2025)",
            "In the UK used upholstered furniture must meet the fire safety rules and carry the permanent label, unless "
            + "made before 1 January 1950. Ask Trading Standards."),
        Rule(piece => piece.IsHardwood, "wood dust",
            "collect it at the tool and wear a fitting respirator", Working, "US", SourceStatus.Published,
            "NIOSH Pocket Guide: 1 mg/m³; OSHA wood dust page",
            "Wood dust is a carcinogen, by NIOSH: collect it at the tool and wear a fitting respirator. Limits are "
            + "OSHA's and NIOSH's in the US; other countries have their own."),
        Rule(piece => piece.Says("mdf", "particleboard", "chipboard", "plywood", "fiberboard", "fibreboard"),
            "formaldehyde", "buy only compliant panels for a repair", Working | Selling, "US", SourceStatus.Published,
            "15 USC 2697 (TSCA Title VI); 40 CFR 770 (the duty for added panels is a reading of it)",
            "Second-hand furniture is outside the US formaldehyde rule for composite wood, but buy only compliant "
            + "panels for a repair. Ask the EPA."),
        Rule(piece => piece.Says("convert", "converted", "repurposed", "upcycled"), "changed products",
            "ask an adviser before you convert it", Selling, "EU",
            SourceStatus.FromMemory, "(EU) 2023/988, Article 13",
            "Who changes a product substantially may count as its maker in the EU. Ask an adviser or the national "
            + "authority."),
        Rule(piece => piece.MayBeOlderThan1978 || piece.IsForNursery, "claims",
            "claim antique, child-safe or non-toxic only with proof", Selling, "all",
            SourceStatus.CommonPractice, "General consumer law",
            "Say what was repaired and repainted and what a lead test found; write antique, child-safe or non-toxic "
            + "only with proof. Ask a consumer law adviser."),
        Rule(_ => true, "recalls",
            "search them before you buy and before you sell", Buying | Selling, "US, UK and EU", SourceStatus.Published,
            "US: CPSIA 2008 section 216, 15 USC 2068; UK: General Product Safety Regulations 2005; EU: (EU) 2023/988",
            "Search the recalls before you buy and before you sell: selling a recalled product is unlawful in the US, "
            + "and in the UK and EU what a trader sells second-hand must be safe (in the EU antiques are excluded). Ask "
            + "the CPSC, Trading Standards or the national authority."),
    ];

    private static CautionRule Rule(
        Func<CautionTraits, bool> fits,
        string topic,
        string act,
        CautionTime when,
        string jurisdiction,
        SourceStatus status,
        string source,
        string text) =>
        new(new(topic, act, when, text, source, status, jurisdiction) { IsGrave = Grave.Contains(topic) }, fits);
}
