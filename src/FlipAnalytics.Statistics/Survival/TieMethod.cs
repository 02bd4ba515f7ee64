namespace FlipAnalytics.Statistics;

/// <summary>How spells that end at the same time enter Cox's likelihood.</summary>
public enum TieMethod
{
    /// <summary>As the average over the orders in which they may have ended; Efron (1977), J. Am. Stat. Assoc. 72,
    /// 557–565. R's default, and close to exact also with many ties.</summary>
    Efron,

    /// <summary>As if all were still at risk when each ended; Breslow (1974), Biometrics 30, 89–99. Pulls coefficients
    /// towards 0 where ties are many.</summary>
    Breslow,
}
