namespace FlipAnalytics.Statistics;

/// <summary>What the spells of one distinct stopping time weigh together.</summary>
/// <param name="AtRisk">Of those under observation just before it, nⱼ.</param>
/// <param name="Ended">Of those that ended at it, dⱼ.</param>
/// <param name="Censored">Of those last seen at it.</param>
public readonly record struct RiskWeight(double AtRisk, double Ended, double Censored);
