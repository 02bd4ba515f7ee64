namespace FlipAnalytics.Tests;

/// <summary>Words that owners of workshops use, to see that none is taken for another (common usage, put together for tests).</summary>
internal static class FurnitureWords
{
    public static string[] Types { get; } = Words(
        "armchair, armoire, bar cart, bar stool, bed, bed frame, bench, blanket chest, bookcase, bookshelf, buffet, bunk bed, "
        + "bureau, cabinet, card table, cedar chest, chair, chaise longue, changing table, chest, chest of drawers, "
        + "china cabinet, coat rack, coffee table, commode, computer desk, console table, corner cabinet, cot, couch, cradle, "
        + "credenza, crib, cupboard, daybed, desk, desk chair, dining chair, dining table, display cabinet, drawer unit, "
        + "dresser, dressing table, drop-leaf table, drum table, end table, entry bench, etagere, filing cabinet, "
        + "floor lamp, footstool, four-poster, futon frame, gateleg table, hall stand, hall table, hat stand, headboard, "
        + "high chair, highboy, hope chest, hutch, jewelry box, kitchen cart, kitchen island, kitchen table, ladder shelf, "
        + "lamp table, larder, linen press, locker, loveseat, lowboy, magazine rack, media console, mirror, nest of tables, "
        + "nightstand, office chair, ottoman, pew, piano bench, picture frame, pie safe, plant stand, play table, "
        + "record cabinet, rocker, rocking chair, roll-top desk, room divider, secretary, serving cart, settee, settle, "
        + "sewing table, shelf, shelving unit, shoe rack, side chair, side table, sideboard, sofa, sofa table, stool, "
        + "storage bench, tallboy, tea table, telephone table, toy chest, tray table, trestle table, trolley, trunk, "
        + "tv stand, umbrella stand, vanity, vanity bench, vitrine, wall shelf, wardrobe, washstand, wine rack, "
        + "workbench, writing desk");

    public static string[] Materials { get; } = Words(
        "acacia, alder, ash, bamboo, beech, birch, brass, cane, cedar, cherry, chestnut, chipboard, elm, glass, hickory, iron, "
        + "laminate, larch, leather, lime, linen, mahogany, mango, maple, marble, mdf, metal, oak, oak veneer, osb, pear, "
        + "pine, pine veneer, plastic, plywood, poplar, rattan, rosewood, rubberwood, spruce, steel, sycamore, teak, "
        + "veneer, velvet, walnut, wicker, willow, yew");

    public static string[] Colors { get; } = Words(
        "apricot, aqua, beige, black, blue, blush, bone, brick, brown, burgundy, butter, caramel, charcoal, chocolate, coal, "
        + "cobalt, copper, coral, cream, dark blue, dark green, denim, dove, duck egg, dusky pink, dusty blue, dusty pink, "
        + "ebony, ecru, emerald, espresso, forest, gold, graphite, gray, green, greige, indigo, ivory, jade, jet, khaki, "
        + "lavender, lemon, light blue, light green, lilac, lime, linen, magenta, maroon, mauve, midnight, mint, mist, moss, "
        + "mustard, natural, navy, ochre, off-white, olive, onyx, orange, pale blue, peach, pearl, pewter, pink, plum, "
        + "purple, red, rose, ruby, rust, sage, sand, scarlet, silver, sky, slate, stone, tan, taupe, teal, terracotta, "
        + "turquoise, two-tone, violet, walnut, white, wine, yellow");

    public static string[] Finishes { get; } = Words(
        "antique wax, chalk paint, clear wax, danish oil, dark wax, eggshell, enamel, flat, french polish, gel stain, gloss, "
        + "hardwax oil, high gloss, lacquer, limewash, linseed oil, matt, milk paint, mineral paint, oil, paint, "
        + "polyurethane, primer, satin, semi-gloss, shellac, soap, stain, tung oil, varnish, wax, whitewash");

    public static string[] Places { get; } = Words(
        "antique fair, attic sale, auction, barn sale, boot fair, car boot, charity shop, church sale, classified ad, "
        + "clearance, consignment, curbside, dealer, estate sale, flea market, friend, garage sale, gift, house clearance, "
        + "inherited, jumble sale, local shop, market stall, neighbor, online, own home, roadside, rummage sale, "
        + "salvage yard, skip, street, swap, thrift store, tip, trade, word of mouth, yard sale");

    public static IEnumerable<string[]> Lists => [Types, Materials, Colors, Finishes, Places];

    private static string[] Words(string list) => list.Split(", ");
}
