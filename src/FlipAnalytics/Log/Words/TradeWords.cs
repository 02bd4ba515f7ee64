using System.Collections.Frozen;

namespace FlipAnalytics;

/// <summary>
/// Words that the trade knows, so that none of them is taken for a slip of another: kinds of furniture, woods and other
/// materials, colors, finishes, and where things are found and sold (common usage). A log may use any other word too.
/// </summary>
internal static class TradeWords
{
    private static readonly FrozenSet<string> Known = string.Join(' ',
        // kinds of furniture
        "armchair armoire barstool bassinet bed bedstead bench bookcase bookrack bookshelf bookstand box breakfront buffet "
        + "bunk bureau cabinet carver cart cellarette chair chaise cheval chest chesterfield chiffonier chifforobe china "
        + "clock club coffee coffer commode computer console corner cot couch cradle credenza crib cupboard davenport daybed "
        + "deck desk dining divan drawer dresser dressing drum end entry étagère etagere file folding footrest footstool "
        + "frame futon gateleg glider hall hallstand hatstand headboard highboy highchair hope hutch island kitchen ladder "
        + "lamp larder linen locker lounge loveseat lowboy magazine media mirror nest nesting nightstand office ottoman patio "
        + "pedestal pew piano picnic plant planter pouf press prie rack recliner rocker rocking roll safe screen seat "
        + "secretaire secretary sectional server settee settle sewing shelf shoe side sideboard sofa stand stool storage "
        + "table tallboy tea telephone toilet top towel toy tray trestle trolley trunk umbrella unit vanity vitrine wagon wall "
        + "wardrobe washstand whatnot wine wing workbench writing",
        // woods and other materials
        "acacia alder ash balsa bamboo bark basswood beech birch boxwood brass bronze burl butternut cane cedar cherry chestnut "
        + "chipboard cork cotton cypress ebony elm fabric felt fir glass hardboard hardwood hickory iron ivory jute laminate "
        + "larch leather lime limed linden mahogany mango maple marble mdf melamine metal mulberry oak olive osb parquet pear "
        + "pecan pine plastic plum plywood poplar rattan redwood resin rope rosewood rubberwood rush satinwood sapele softwood "
        + "spruce steel straw suede sycamore teak tin veneer velvet vinyl walnut wicker willow wool yew zinc",
        // colors
        "alabaster amber apricot aqua aubergine bare beige black blue blush bone brick brown burgundy butter camel caramel "
        + "chalk charcoal chocolate clay clear coal cobalt copper coral cream crimson dark denim dove duck dusky dusty ebony "
        + "ecru egg eggplant eggshell emerald espresso eucalyptus flax forest fuchsia ginger gold golden graphite gray green "
        + "greige hemp honey hunter indigo ink jade jet khaki lavender lead leaf lemon light lilac magenta maroon mauve melon "
        + "midnight mint mist moss mustard natural navy neutral nude ochre ocher off onyx orange oyster pale peach pearl "
        + "petrol pewter pink pistachio powder putty purple raspberry raw red rose royal ruby russet rust rusty sage salmon "
        + "sand sapphire scarlet shell silver sky slate smoke snow stone storm straw sun tan taupe teal terracotta turquoise "
        + "umber unfinished vanilla violet warm water white wood yellow",
        // finishes
        "acrylic antique bleach chalky crackle danish decal distressed eggshell enamel flat gesso gilt glaze gloss hardwax "
        + "lacquer latex limewash lime matt milk mineral oil oiled paint poly polish polyurethane primer satin sealer semi "
        + "shabby sheen shellac smooth spray stain stained stencil strip stripped tung two tone varnish wash wax waxed whitewash",
        // where things are found and sold
        "action antique attic auction barn boot car charity church classified clearance consignment curb curbside dump estate "
        + "fair family fete flea friend garage gift house jumble market neighbor online roadside rummage sale salvage school "
        + "shop show skip stall store street swap thrift tip town trade yard",
        // supplies and tools
        "abrasive block brush clamp cloth degreaser feet filler foot glove glue handle hinge knob leg mask nail paper pad "
        + "paste pull putty rag roller runner sander sandpaper saw scraper screw sponge tape wire")
        .Split(' ').Select(WordForm.Of).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Whether a part of a word, in the form of <see cref="WordForm"/>, is one that the trade knows.</summary>
    public static bool Has(string form) => Known.Contains(form);
}
