using MathNet.Numerics;

namespace FlipAnalytics;

internal sealed partial record DemoMarket
{
    /// <summary>Mean share of the sale price that the channels keep.</summary>
    public double MeanFeeRate => WeightedMean(channel => (double)channel.FeeRate);

    /// <summary>Mean fixed fee a sale, in USD.</summary>
    public double MeanFixedFee => WeightedMean(channel => (double)channel.FixedFee);

    /// <summary>Mean cost of delivery a sale less what buyers pay for it, in USD.</summary>
    public double MeanDelivery => DeliveryShare * (DeliveryCosts.Average() - DeliveryCharges.Average());

    /// <summary>Median hours of a sound, satin piece of that type, size and count.</summary>
    /// <param name="facts">The piece.</param>
    public double UsualHours(DemoFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return TypeOf(facts.Type).Hours
            * Math.Exp(SizeOnHours * Size(facts) + CountOnHours * Math.Log(facts.Count));
    }

    /// <summary>Median hours of such pieces.</summary>
    /// <param name="facts">The piece.</param>
    public double MedianHours(DemoFacts facts) => UsualHours(facts)
        * Math.Exp(ConditionOf(facts.Condition).OnHours + FinishOf(facts.Finish).OnHours);

    /// <summary>Mean hours of such pieces.</summary>
    /// <param name="facts">The piece.</param>
    public double ExpectedHours(DemoFacts facts) => MedianHours(facts) * Math.Exp(HoursNoise * HoursNoise / 2);

    /// <summary>Median supplies of such pieces, in USD.</summary>
    /// <param name="facts">The piece.</param>
    public double MedianSupplies(DemoFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return TypeOf(facts.Type).Supplies * Math.Exp(
            SizeOnSupplies * Size(facts) + CountOnSupplies * Math.Log(facts.Count)
            + ConditionOf(facts.Condition).OnSupplies + FinishOf(facts.Finish).OnSupplies);
    }

    /// <summary>Mean supplies of such pieces, in USD.</summary>
    /// <param name="facts">The piece.</param>
    public double ExpectedSupplies(DemoFacts facts) =>
        MedianSupplies(facts) * Math.Exp(SuppliesNoise * SuppliesNoise / 2);

    /// <summary>Median sale price of such pieces with the given hours, in USD.</summary>
    /// <param name="facts">The piece.</param>
    /// <param name="soldOn">Day of the sale.</param>
    /// <param name="hours">Hours worked on it; the median of such pieces where null.</param>
    public double MedianSalePrice(DemoFacts facts, DateOnly soldOn, double? hours = null)
    {
        ArgumentNullException.ThrowIfNull(facts);
        double beyondUsual = Math.Log((hours ?? MedianHours(facts)) / UsualHours(facts));
        return Math.Exp(Base
            + TypeOf(facts.Type).OnPrice + ColourOf(facts.Colour).OnPrice
            + ConditionOf(facts.Condition).OnPrice + FinishOf(facts.Finish).OnPrice
            + SizeOnPrice * Size(facts) + CountOnPrice * Math.Log(facts.Count)
            + HoursOnPrice * beyondUsual + Season(soldOn) + Level(soldOn));
    }

    /// <summary>
    /// Mean sale price of such pieces, in USD. Where the hours are not given, the mean is over their spread too: longer
    /// work sells for more, so that sale price and hours go together.
    /// </summary>
    /// <param name="facts">The piece.</param>
    /// <param name="soldOn">Day of the sale.</param>
    /// <param name="hours">Hours worked on it, or null.</param>
    public double ExpectedSalePrice(DemoFacts facts, DateOnly soldOn, double? hours = null)
    {
        double throughHours = hours is null ? HoursOnPrice * HoursNoise : 0;
        return MedianSalePrice(facts, soldOn, hours)
            * Math.Exp(throughHours * throughHours / 2)
            * DemoNoise.MeanOfExponential(PriceNoise, HeavyTails);
    }

    /// <summary>Scale λ of the Weibull distribution of days on market.</summary>
    /// <param name="facts">The piece.</param>
    /// <param name="logAskingOverMedian">Log of asking price over median sale price.</param>
    public double DaysScale(DemoFacts facts, double logAskingOverMedian)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return Math.Exp(DaysBase + TypeOf(facts.Type).OnDays + ColourOf(facts.Colour).OnDays
            + AskingOnDays * logAskingOverMedian);
    }

    /// <summary>Mean days on market at an asking price that is never cut.</summary>
    /// <param name="facts">The piece.</param>
    /// <param name="logAskingOverMedian">Log of asking price over median sale price; the habit's mean where null.</param>
    public double ExpectedDays(DemoFacts facts, double? logAskingOverMedian = null) =>
        DaysScale(facts, logAskingOverMedian ?? Habits.AskingMean) * SpecialFunctions.Gamma(1 + 1 / DaysShape);

    /// <summary>
    /// The highest purchase price at which the target wage is met on average, given all facts:
    /// E[S](1 − f) − g − E[L] − E[C] − w·E[H], in USD; negative for a piece that does not pay even as a gift. It has no
    /// cost of storage or capital and takes the piece to be sold in the end.
    /// </summary>
    /// <param name="facts">The piece.</param>
    /// <param name="soldOn">Day of the sale.</param>
    public double AffordablePrice(DemoFacts facts, DateOnly soldOn) =>
        ExpectedSalePrice(facts, soldOn) * (1 - MeanFeeRate) - MeanFixedFee - MeanDelivery
        - ExpectedSupplies(facts) - TargetWage * ExpectedHours(facts);

    /// <summary>
    /// The same when only part is known: the mean over colours by their shares and over unknown dimensions by their
    /// spread within the type. Exact, since all enter through exponentials of independent normal parts.
    /// </summary>
    /// <param name="facts">The piece; what is unknown of it is not looked at.</param>
    /// <param name="soldOn">Day of the sale.</param>
    /// <param name="colourKnown">Whether the colour is known.</param>
    /// <param name="widthKnown">Whether the width is known.</param>
    /// <param name="depthAndHeightKnown">Whether depth and height are known.</param>
    public double AffordablePriceAsSeen(
        DemoFacts facts, DateOnly soldOn, bool colourKnown, bool widthKnown, bool depthAndHeightKnown)
    {
        ArgumentNullException.ThrowIfNull(facts);
        DemoType type = TypeOf(facts.Type);
        double unknown = 0;
        if (!widthKnown)
        {
            unknown += WidthSpread * WidthSpread;
            facts = facts with { Width = type.Width };
        }
        if (!depthAndHeightKnown)
        {
            unknown += DepthSpread * DepthSpread + HeightSpread * HeightSpread;
            facts = facts with { Depth = type.Depth, Height = type.Height };
        }
        double salePrice = colourKnown
            ? ExpectedSalePrice(facts, soldOn)
            : Colours.Sum(colour => colour.Share * ExpectedSalePrice(facts with { Colour = colour.Word }, soldOn))
                / Colours.Sum(colour => colour.Share);
        return salePrice * MeanOfPower(SizeOnPrice, unknown) * (1 - MeanFeeRate) - MeanFixedFee - MeanDelivery
            - ExpectedSupplies(facts) * MeanOfPower(SizeOnSupplies, unknown)
            - TargetWage * ExpectedHours(facts) * MeanOfPower(SizeOnHours, unknown);
    }

    /// <summary>Log of volume over that of the type's typical piece.</summary>
    /// <param name="facts">The piece.</param>
    public double Size(DemoFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        DemoType type = TypeOf(facts.Type);
        return Math.Log(facts.Width * facts.Depth * facts.Height / (type.Width * type.Depth * type.Height));
    }

    /// <summary>Effect of the time of the year on the log sale price.</summary>
    /// <param name="date">Day of the sale.</param>
    public double Season(DateOnly date) =>
        SeasonOnPrice * Math.Cos(2 * Math.PI * (date.DayOfYear - SeasonPeak) / 365.25);

    /// <summary>Level of the market in log sale price.</summary>
    /// <param name="date">Day of the sale.</param>
    public double Level(DateOnly date)
    {
        double months = (date.Year - FirstMonth.Year) * 12 + date.Month - FirstMonth.Month
            + (date.Day - 1.0) / DateTime.DaysInMonth(date.Year, date.Month);
        months = Math.Clamp(months, 0, MonthlyLevels.Length - 1);
        int month = Math.Min((int)months, Math.Max(MonthlyLevels.Length - 2, 0));
        double next = MonthlyLevels[Math.Min(month + 1, MonthlyLevels.Length - 1)];
        return MonthlyLevels[month] + (months - month) * (next - MonthlyLevels[month]);
    }

    internal DemoType TypeOf(string name) => Find(Types, type => type.Name, name, "type");

    internal DemoColour ColourOf(string word) => Find(Colours, colour => colour.Word, word, "color");

    internal DemoFinish FinishOf(string name) => Find(Finishes, finish => finish.Name, name, "finish");

    internal DemoCondition ConditionOf(Condition condition) =>
        Conditions.First(entry => entry.Condition == condition);

    private static double MeanOfPower(double power, double variance) => Math.Exp(power * power * variance / 2);

    private static T Find<T>(IReadOnlyList<T> entries, Func<T, string> name, string wanted, string what)
    {
        foreach (T entry in entries)
        {
            if (name(entry) == wanted)
                return entry;
        }
        throw new ArgumentException(
            $"The demo market has no {what} '{wanted}'; it has {string.Join(", ", entries.Select(name))}.");
    }

    private double WeightedMean(Func<DemoChannel, double> value) =>
        Channels.Sum(channel => channel.Share * value(channel)) / Channels.Sum(channel => channel.Share);
}
