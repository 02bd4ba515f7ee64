using System.Text.Json;

namespace FlipAnalytics.Tests;

public sealed class UnsettledFitTests
{
    [Theory]
    [InlineData(ModelName.Price)]
    [InlineData(ModelName.Days)]
    public void A_fit_whose_search_had_not_settled_says_so_in_its_first_lines_and_in_its_document(ModelName model)
    {
        FitReport settled = ModelFitting.Fit(FittedModels.Of(Workbench.Demo(60, seed: 4)), model, Estimator.Mixed, false);
        Assert.DoesNotContain("settled", FitText.Render(settled, all: true), StringComparison.Ordinal);
        Assert.True(Document(settled).GetProperty("converged").GetBoolean());

        FitReport unsettled = settled with { Converged = false };
        Assert.Contains("had not settled", string.Join(' ', FitText.Render(unsettled).Split('\n').Take(3)), StringComparison.Ordinal);
        Assert.False(Document(unsettled).GetProperty("converged").GetBoolean());
    }

    private static JsonElement Document(FitReport report) => JsonDocument.Parse(FitJson.Render(report)).RootElement;
}
