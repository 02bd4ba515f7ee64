using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>What the words and measures of a piece say about the cautions that fit it.</summary>
internal sealed class CautionTraits
{
    private static readonly string[] OldWords =
    [
        "antique", "vintage", "retro", "victorian", "edwardian", "georgian", "regency", "colonial", "art deco",
        "art nouveau", "mid century", "midcentury", "mcm", "prewar", "pre war", "heirloom", "old",
    ];

    private static readonly string[] ClothingStorageWords =
    [
        "dresser", "chest", "bureau", "armoire", "wardrobe", "chifferobe", "chifforobe", "chiffonier", "tallboy",
        "highboy", "lowboy",
    ];

    private static readonly string[] LidWords =
    [
        "toy box", "toy chest", "toybox", "blanket chest", "blanket box", "hope chest", "cedar chest", "storage chest",
        "storage bench", "trunk", "coffer", "ottoman box",
    ];

    private static readonly string[] LowOrOpenWords =
    [
        "table", "desk", "chair", "bed", "bench", "stool", "sofa", "couch", "settee", "loveseat", "lamp", "mirror",
        "headboard", "ottoman", "armchair", "recliner", "crib", "cot", "bassinet", "cradle", "mattress", "bunk",
    ];

    private static readonly string[] HardwoodWords =
    [
        "oak", "beech", "walnut", "maple", "ash", "cherry", "mahogany", "teak", "birch", "hardwood", "cedar", "elm",
    ];

    private readonly CautionQuery query;
    private readonly string kind;
    private readonly string material;
    private readonly string finish;
    private readonly string everything;

    public CautionTraits(CautionQuery query)
    {
        this.query = query;
        kind = Normalise($"{query.Type} {query.Title}");
        material = Normalise(query.Material ?? "");
        finish = Normalise(query.Finish ?? "");
        everything = Normalise(
            $"{query.Type} {query.Title} {query.Notes} {query.Material} {query.Colour} {query.Finish}");
        MayBeOlderThan1978 = Says(OldWords) || Years().Any(year => year < 1978);
    }

    /// <summary>Whether an age word, a year or a decade says it may be older than 1978.</summary>
    public bool MayBeOlderThan1978 { get; }

    public bool IsDamagedOrUnknown => query.Condition is not Condition.Sound;

    public bool IsCrib => Is("crib", "cot", "bassinet", "cradle");

    public bool IsForNursery =>
        IsCrib || Is("nursery", "changing table", "high chair", "highchair", "toddler bed", "playpen", "baby");

    public bool IsBunkBed => Is("bunk", "bunk bed", "loft bed");

    public bool IsMattress => Is("mattress", "box spring", "futon");

    /// <summary>A chest that is no chest of drawers may have a lid.</summary>
    public bool MayHaveLid => Is(LidWords) || (Is("chest") && !HasDrawersByName);

    /// <summary>
    /// Bedroom storage that may be a clothing storage unit: at least 27 in high and 3.2 ft³ (5,529.6 in³) enclosed,
    /// where measures do not rule it out. A nightstand counts only where its measured height reaches 27 in.
    /// </summary>
    public bool MayBeClothingStorage =>
        (IsBedroomStorage || (IsNightstand && query.HeightInches is not null))
        && query.HeightInches is null or >= 27
        && query.OuterCubicInches is null or >= 5529.6m;

    /// <summary>Shelves and cases, or anything tall that is no table, seat or bed.</summary>
    public bool MayTip => !Is(LowOrOpenWords) && !MayBeClothingStorage
        && (query.HeightInches is >= 27 || (query.HeightInches is null && Is(
            "bookcase", "bookshelf", "shelf", "shelves", "shelving", "cabinet", "hutch", "cupboard", "etagere")));

    public bool IsUpholstered =>
        Is("sofa", "couch", "settee", "loveseat", "armchair", "recliner", "ottoman", "footstool", "chaise", "wingback",
            "chesterfield", "daybed")
        || Says("upholstered", "upholstery", "reupholster", "reupholstered", "padded", "cushion", "cushioned", "fabric");

    public bool MayBePadded => IsUpholstered || Is("chair", "dining chair", "stool");

    public bool IsFromBedroom => IsBedroomStorage || IsNightstand || IsMattress || Is("bed", "headboard", "bunk");

    public bool IsBuiltIn => Says("built in", "builtin", "kitchen cabinet", "fitted");

    public bool IsElectric =>
        (Is("lamp", "chandelier", "lantern", "fan", "heater", "clock") && !Is("lamp table"))
        || Says("electric", "wired", "wiring", "lighted", "plug", "motor", "button cell");

    /// <summary>Looked up in the material and the kind only: walnut and cherry are colours too.</summary>
    public bool IsHardwood => HardwoodWords.Any(word => Contains(material, word) || Contains(kind, word));

    /// <summary>Looked up in the finish; elsewhere a stain or an oil spot is no finish.</summary>
    public bool HasOilFinish =>
        Contains(finish, "oil", "oiled", "stain", "stained", "varnish", "varnished")
        || Says("linseed", "danish oil", "tung oil", "oil based");

    /// <summary>Whether any of the words stands anywhere in what is written of the piece.</summary>
    public bool Says(params string[] words) => Contains(everything, words);

    private bool IsNightstand => Is("nightstand", "night stand", "bedside table", "bedside cabinet", "bedside");

    private bool HasDrawersByName => Is("chest of drawer", "drawer chest", "drawer");

    private bool IsBedroomStorage => (Is(ClothingStorageWords) && !Is(LidWords)) || HasDrawersByName;

    /// <summary>Whether the type or title names one of these kinds.</summary>
    private bool Is(params string[] words) => Contains(kind, words);

    /// <summary>Whether one of the words, or its plural, stands in the text as a whole word.</summary>
    private static bool Contains(string text, params ReadOnlySpan<string> words)
    {
        foreach (string word in words)
        {
            if (text.Contains($" {word} ", StringComparison.Ordinal)
                || text.Contains($" {word}s ", StringComparison.Ordinal)
                || text.Contains($" {word}es ", StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Years (1962) and decades (1950s, '50s, 50s) that are written of it.</summary>
    private ImmutableArray<int> Years()
    {
        var years = ImmutableArray.CreateBuilder<int>();
        foreach (string word in everything.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string digits = word.TrimEnd('s');
            if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int number))
                continue;
            if (digits.Length == 4 && number is >= 1600 and < 2100)
                years.Add(number);
            else if (digits.Length == 2 && digits != word && number % 10 == 0 && number >= 20)
                years.Add(1900 + number);
        }

        return years.ToImmutable();
    }

    /// <summary>Small letters, one space between words and at both ends, everything else dropped.</summary>
    private static string Normalise(string text)
    {
        var plain = new StringBuilder(" ");
        foreach (char letter in text.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(letter))
                plain.Append(letter);
            else if (plain[^1] != ' ')
                plain.Append(' ');
        }

        return plain.Append(' ').ToString();
    }
}
