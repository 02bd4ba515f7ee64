using System.Collections.Immutable;
using System.Globalization;
using MathNet.Numerics.Statistics;

namespace FlipAnalytics;

/// <summary>What the owner should know about an answer: what was assumed, and what would make it surer.</summary>
internal static class PurchaseNotes
{
    public static IEnumerable<string> Of(
        Candidate candidate, FittedModels models, PurchaseTerms terms, SellingTerms selling, JointForecast forecast,
        CandidateLaws laws)
    {
        Workshop workshop = models.Log.Workshop;
        if (terms.TargetWage is null && workshop.TargetWage is null)
        {
            yield return $"No target wage is set: {MoneyText.Exact(PurchaseTerms.AssumedWage, workshop)} an hour is taken. "
                + "Put target_wage into workshop.toml or give --wage.";
        }

        if (candidate.SalePrice is null && Comparables.Basis(models.Log, candidate) is { OfType: 0, Sales: > 0 })
        {
            yield return $"No {candidate.Type} is among your sales: the price leans on pieces that take like hours, "
                + "so its range is wide.";
        }

        if (models.Weighed is { IsEmpty: false } weighed)
            yield return WeighedText(weighed, workshop);

        if (Part(laws.Guessed.Price) is { } price)
            yield return Text($"{price} the sale price is guess, not your own sales; it fades as sales come in.");
        if (Part(laws.Guessed.Hours) is { } hours)
        {
            yield return Text($"{hours} the hours is guess or what such pieces usually take (common practice), ")
                + "not your own log; say --hours if you know better.";
        }

        if (candidate.Supplies is null && models.Supplies is null)
        {
            yield return Text($"Your log has no cost of supplies: a tenth of the sale price is taken (a rough guess). ")
                + "Say --supplies if you know better.";
        }
        else if (Part(laws.Guessed.Supplies) is { } supplies)
        {
            yield return Text($"{supplies} the supplies is guess, not your own log.");
        }

        if (!selling.IsChannelKnown && selling.FeeSource is not null)
            yield return $"No fees through {terms.Channel} are on record: those of your usual mix are taken.";

        if (selling.FeeSource is null)
            yield return "No selling fees are on record: none are counted. Log fees, or put [fees.CHANNEL] into workshop.toml.";
        if (models.Days.HasFailed)
            yield return "Your days on market could not be put into one picture, so only a general guess stands in for them. See flip check.";
        else if (laws.Guessed.Days >= 1)
            yield return "No sale with a listing date is on record: the days on market are only a general guess.";
        bool isMeasured = candidate is { Width: > 0, Depth: > 0, Height: > 0 };
        if (!isMeasured && candidate.SalePrice is null && laws.Price is { SizeVariance: > 0 } prediction)
        {
            double narrower = 1 - Math.Sqrt(Math.Max(0, 1 - prediction.SizeVariance / prediction.Variance));
            if (narrower >= 0.01)
            {
                yield return Text($"Not every dimension is known: measuring it would narrow the price range by about ")
                    + Text($"{100 * narrower:0} %.");
            }
        }

        if (candidate.Hours is null && HoursPart(forecast, terms.WageFor(workshop)) is >= 0.01 and var part)
        {
            yield return Text($"The hours are estimated: knowing them would narrow the range of the most to pay by about ")
                + Text($"{100 * part:0} %.");
        }
    }

    private static string WeighedText(ImmutableArray<WeighedRow> weighed, Workshop workshop)
    {
        WeighedRow first = weighed[0];
        string Amount(double amount) => first.Model == ModelName.Hours
            ? Text($"{amount:0.#} h")
            : MoneyText.Whole(Crossing.Money(amount, workshop.Currency), workshop);
        string count = weighed.Length == 1 ? "One amount" : Text($"{weighed.Length} amounts");
        string taken = first.ReadAs is { } read ? Text($"; it is taken as {Amount(read)} here") : "";
        return Text($"{count} in your log so far out of line that the answer hardly leans on {(weighed.Length == 1 ? "it" : "them")}: ")
            + Text($"{first.PieceId} has {ModelFitting.Words(first.Model)} {Amount(first.Amount)}, where about ")
            + Text($"{Amount(first.Expected)} is expected{taken}. See flip check.");
    }

    /// <summary>Why a careful limit lies above the ceiling, where it does although it is to hold more often than not.</summary>
    public static IEnumerable<string> OfSkew(decimal ceiling, decimal careful, decimal chance)
    {
        if (chance >= 0.5m && careful > ceiling)
        {
            yield return "The careful limit lies above the most to pay: few pieces would turn out far worse than the rest, "
                + "and they pull the average down.";
        }
    }

    // Share by which the spread of S − w·H shrinks when H is known, S's own dependence on H included.
    private static double HoursPart(JointForecast forecast, decimal wage)
    {
        double w = Crossing.Number(wage);
        var value = new double[forecast.Hours.Length];
        for (int i = 0; i < value.Length; i++)
            value[i] = forecast.SalePrice[i] - w * forecast.Hours[i];
        double variance = ArrayStatistics.PopulationVariance(value);
        double along = ArrayStatistics.PopulationCovariance(value, forecast.Hours);
        double hours = ArrayStatistics.PopulationVariance(forecast.Hours);
        return variance <= 0 || hours <= 0 ? 0 : 1 - Math.Sqrt(Math.Max(0, 1 - along * along / (hours * variance)));
    }

    private static string? Part(double share) => share switch
    {
        < 0.1 => null,
        < 0.4 => "Part of",
        < 0.75 => "About half of",
        < 0.995 => "Most of",
        _ => "All of",
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
