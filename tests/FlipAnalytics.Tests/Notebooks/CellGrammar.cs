using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>
/// What a code cell may hold. A cell calls the library and shows what comes back, so the list is short: calls, members,
/// names, objects and lists filled in place, and variables that keep a result. The cell of parameters holds nothing but
/// variables with a fixed value. Whatever is not on the list is refused: arithmetic, comparisons, lambdas, loops, branches,
/// own methods.
/// </summary>
internal static class CellGrammar
{
    private static readonly string[] Aggregates =
        ["Sum", "Average", "Min", "Max", "Count", "Aggregate", "Median", "Mean", "Description", "GroupBy"];

    /// <summary>What does not belong into a cell; nothing if all does.</summary>
    public static IEnumerable<string> Refused(NotebookCell cell) => cell.Tags switch
    {
        _ when cell.Tags.Contains("parameters") => RefusedAsParameters(cell.Source),
        _ when cell.Tags.Contains("jupyter") => RefusedAsLoading(cell.Source),
        _ => RefusedAsCall(cell.Source),
    };

    public static IEnumerable<string> RefusedAsCall(string code)
    {
        CompilationUnitSyntax root = Parse(code);
        return root.DescendantNodes().Where(node => !IsCall(node)).Select(Describe)
            .Concat(root.DescendantTrivia().Where(trivia => trivia.IsDirective).Select(trivia => trivia.ToString()))
            .Concat(Errors(root));
    }

    public static IEnumerable<string> RefusedAsParameters(string code)
    {
        CompilationUnitSyntax root = Parse(code);
        return root.Members.Where(member => member is not FieldDeclarationSyntax field
                || !field.Declaration.Variables.All(variable => variable.Initializer is { } given && IsFixed(given.Value)))
            .Select(Describe).Concat(Errors(root));
    }

    public static IEnumerable<string> RefusedAsLoading(string code)
    {
        CompilationUnitSyntax root = Parse(code);
        return root.Members.Select(Describe)
            .Concat(code.Split('\n').Where(line => !line.StartsWith("#r \"../src/", StringComparison.Ordinal)))
            .Concat(Errors(root));
    }

    private static CompilationUnitSyntax Parse(string code) => (CompilationUnitSyntax)CSharpSyntaxTree
        .ParseText(code, CSharpParseOptions.Default.WithKind(SourceCodeKind.Script)).GetRoot();

    private static IEnumerable<string> Errors(SyntaxNode root) => root.GetDiagnostics()
        .Where(fault => fault.Severity == DiagnosticSeverity.Error).Select(fault => fault.ToString());

    private static string Describe(SyntaxNode node) => $"{node.Kind()}: {node}";

    /// <summary>A value that depends on nothing but the day.</summary>
    private static bool IsFixed(ExpressionSyntax value) => value switch
    {
        LiteralExpressionSyntax => true,
        PrefixUnaryExpressionSyntax negative => negative.IsKind(SyntaxKind.UnaryMinusExpression) && negative.Operand is LiteralExpressionSyntax,
        MemberAccessExpressionSyntax word => word.Expression is IdentifierNameSyntax,
        InvocationExpressionSyntax today => today.ToString() == "DateOnly.FromDateTime(DateTime.Now)",
        ObjectCreationExpressionSyntax date => date.Type.ToString() == "DateOnly"
            && date.ArgumentList?.Arguments.All(argument => argument.Expression is LiteralExpressionSyntax) == true,
        CollectionExpressionSyntax list => list.Elements.All(element => element is ExpressionElementSyntax one && IsFixed(one.Expression)),
        _ => false,
    };

    private static bool IsCall(SyntaxNode node) => node switch
    {
        CompilationUnitSyntax or UsingDirectiveSyntax or GlobalStatementSyntax or ExpressionStatementSyntax => true,
        FieldDeclarationSyntax or VariableDeclarationSyntax or VariableDeclaratorSyntax or EqualsValueClauseSyntax => true,
        MemberAccessExpressionSyntax member => member.IsKind(SyntaxKind.SimpleMemberAccessExpression)
            && member.Expression.ToString() is not ("Math" or "MathF")
            && !Aggregates.Contains(member.Name.Identifier.Text),
        InvocationExpressionSyntax or ArgumentListSyntax or ArgumentSyntax or NameColonSyntax => true,
        TypeSyntax or TypeArgumentListSyntax or LiteralExpressionSyntax => true,
        BaseObjectCreationExpressionSyntax or InitializerExpressionSyntax => true,
        AssignmentExpressionSyntax assignment =>
            assignment.IsKind(SyntaxKind.SimpleAssignmentExpression) && assignment.Parent is InitializerExpressionSyntax,
        CollectionExpressionSyntax or ExpressionElementSyntax => true,
        ElementAccessExpressionSyntax element => element.ArgumentList.Arguments.All(argument => argument.Expression is LiteralExpressionSyntax),
        BracketedArgumentListSyntax => true,
        _ => false,
    };
}
