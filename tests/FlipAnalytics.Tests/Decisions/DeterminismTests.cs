using System.Globalization;

namespace FlipAnalytics.Tests;

/// <summary>The same log gives the same digits, whatever the machine.</summary>
public class DeterminismTests
{
    private static readonly SalesLog Log = Workbench.Demo(50, 8);

    [Fact]
    public void A_culture_with_decimal_commas_changes_no_answer_and_no_fit()
    {
        string[] expected = Everything();
        CultureInfo usual = CultureInfo.CurrentCulture;
        var commas = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        commas.NumberFormat.NumberDecimalSeparator = ",";
        commas.NumberFormat.NumberGroupSeparator = ".";
        commas.NumberFormat.NegativeSign = "−";
        commas.DateTimeFormat.ShortDatePattern = "dd.MM.yyyy";
        try
        {
            CultureInfo.CurrentCulture = commas;
            Assert.Equal("1,5", 1.5.ToString());
            Assert.Equal(expected, Everything());
        }
        finally
        {
            CultureInfo.CurrentCulture = usual;
        }
    }

    [Fact]
    public void Many_candidates_at_once_get_the_answers_that_each_gets_alone()
    {
        var models = FittedModels.Of(Log);
        Candidate[] many = [.. Enumerable.Range(0, 4).SelectMany(_ => Workbench.Various)];
        Assert.Equal(
            many.Select(candidate => Workbench.Text(new MostToPay(models, new()).Decide(candidate))),
            new MostToPay(FittedModels.Of(Log), new()).Decide(many).Select(Workbench.Text));
    }

    private static string[] Everything() =>
    [
        .. Workbench.Decide(Log, Workbench.Various).Select(Workbench.Text),
        .. Workbench.Fits.Select(fit => Workbench.FitOrSentence(Log, fit)),
    ];
}
