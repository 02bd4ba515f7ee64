namespace FlipAnalytics.Statistics;

/// <summary>Generating vectors of the lattices behind <see cref="NormalNodes"/>, for up to eight dimensions. A test repeats
/// the search that found them.</summary>
internal static class GeneratingVectors
{
    public const int MostDimensions = 8;

    public static readonly SortedDictionary<int, int[]> ByCount = new()
    {
        [256] = [1, 111, 157, 121, 137, 203, 67, 39],
        [512] = [1, 111, 217, 377, 231, 199, 35, 65],
        [1024] = [1, 367, 479, 191, 759, 713, 593, 871],
        [2048] = [1, 479, 367, 1771, 619, 797, 1919, 1111],
        [4096] = [1, 1599, 3319, 1155, 3491, 665, 295, 2677],
        [8192] = [1, 2199, 5249, 3677, 1449, 3927, 7785, 3081],
        [16384] = [1, 11807, 10177, 12027, 7511, 6677, 14007, 5515],
    };
}
