using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PlatformForge.Mutants;

/// <summary>
/// The fixed operators. Bounds of comparisons are moved for whole numbers alone: that two reals are equal has no place in geometry. Steps of loops
/// are left, since they only make loops without an end. Texts are left.
/// </summary>
internal static class Operators
{
    private static readonly Dictionary<SyntaxKind, string> Arithmetic = new()
    {
        [SyntaxKind.AddExpression] = "-",
        [SyntaxKind.SubtractExpression] = "+",
        [SyntaxKind.MultiplyExpression] = "/",
        [SyntaxKind.DivideExpression] = "*",
        [SyntaxKind.ModuloExpression] = "*",
    };

    private static readonly Dictionary<SyntaxKind, string> Bounds = new()
    {
        [SyntaxKind.LessThanExpression] = "<=",
        [SyntaxKind.LessThanOrEqualExpression] = "<",
        [SyntaxKind.GreaterThanExpression] = ">=",
        [SyntaxKind.GreaterThanOrEqualExpression] = ">",
    };

    private static readonly Dictionary<SyntaxKind, string> Assignments = new()
    {
        [SyntaxKind.AddAssignmentExpression] = "-=",
        [SyntaxKind.SubtractAssignmentExpression] = "+=",
        [SyntaxKind.MultiplyAssignmentExpression] = "/=",
        [SyntaxKind.DivideAssignmentExpression] = "*=",
    };

    private static readonly (string Name, string Other)[] Twins =
    [
        ("Min", "Max"), ("Floor", "Ceiling"), ("Sin", "Cos"), ("First", "Last"), ("FirstOrDefault", "LastOrDefault"), ("Any", "All"), ("MinBy", "MaxBy"),
        ("OrderBy", "OrderByDescending"), ("Skip", "Take"),
    ];

    private static readonly Dictionary<string, string> TwinOf =
        Twins.SelectMany(t => new[] { t, (Name: t.Other, Other: t.Name) }).ToDictionary(t => t.Name, t => t.Other, StringComparer.Ordinal);

    /// <summary>What can be done to one node.</summary>
    public static IEnumerable<(string Operator, string Becomes, Shape Shape)> At(SyntaxNode node, SemanticModel model)
    {
        switch (node)
        {
            case BinaryExpressionSyntax binary:
                return OfBinary(binary, model);
            case PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression } minus:
                return [("sign", minus.Operand.ToString(), Shape.Either)];
            case PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.LogicalNotExpression } not:
                return [("not", not.Operand.ToString(), Shape.Negated)];
            case LiteralExpressionSyntax literal:
                return OfLiteral(literal);
            case ExpressionStatementSyntax { Expression: InvocationExpressionSyntax } call:
                return [("call", ";", Shape.Statement)];
            case ExpressionStatementSyntax { Expression: AssignmentExpressionSyntax assignment }
            when Assignments.TryGetValue(assignment.Kind(), out string? other):
                return [("assignment", $"{assignment.Left} {other} {assignment.Right};", Shape.Statement)];
            case InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax access } call
            when TwinOf.TryGetValue(access.Name.Identifier.Text, out string? twin):
                return [("twin", call.ReplaceNode(access.Name, SyntaxFactory.IdentifierName(twin)).ToString(), Shape.Either)];
            case FieldDeclarationSyntax field when IsNumber(field):
                return [("constant", Doubled(field.Declaration.Variables[0].Initializer!.Value.ToString()), Shape.Constant)];
            case ExpressionSyntax truth when IsBareCondition(truth):
                return [("condition", $"!({truth})", Shape.Negated)];
            default:
                return [];
        }
    }

    private static IEnumerable<(string, string, Shape)> OfBinary(BinaryExpressionSyntax binary, SemanticModel model)
    {
        var kind = binary.Kind();
        if (Arithmetic.TryGetValue(kind, out string? other) && model.GetTypeInfo(binary).Type?.SpecialType
            is not (SpecialType.System_String or SpecialType.System_Object))
        {
            yield return ("arithmetic", $"({binary.Left}) {other} ({binary.Right})", Shape.Either);
        }
        else if (Bounds.TryGetValue(kind, out string? bound))
        {
            yield return ("comparison", $"!({binary})", Shape.Negated);
            if (IsWhole(model.GetTypeInfo(binary.Left).Type) && IsWhole(model.GetTypeInfo(binary.Right).Type))
            {
                yield return ("bound", $"({binary.Left}) {bound} ({binary.Right})", Shape.Either);
            }
        }
        else if (kind is SyntaxKind.EqualsExpression or SyntaxKind.NotEqualsExpression)
        {
            yield return ("equality", $"!({binary})", Shape.Negated);
        }
        else if (kind is SyntaxKind.LogicalAndExpression or SyntaxKind.LogicalOrExpression)
        {
            yield return ("logic", $"({binary.Left}) {(kind == SyntaxKind.LogicalAndExpression ? "||" : "&&")} ({binary.Right})", Shape.Either);
        }
    }

    private static IEnumerable<(string, string, Shape)> OfLiteral(LiteralExpressionSyntax literal)
    {
        if (literal.IsKind(SyntaxKind.TrueLiteralExpression) || literal.IsKind(SyntaxKind.FalseLiteralExpression))
        {
            yield return ("truth", literal.IsKind(SyntaxKind.TrueLiteralExpression) ? "false" : "true", Shape.Either);
        }
        else if (literal.IsKind(SyntaxKind.NumericLiteralExpression))
        {
            yield return ("number", Doubled(literal.Token.Text), Shape.Either);
        }
    }

    private static string Doubled(string text) => text switch
    {
        "0" => "1",
        "0.0" => "1.0",
        _ when int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int whole) => (whole + 1).ToString(CultureInfo.InvariantCulture),
        _ => $"(2 * {text})",
    };

    // The condition of a choice that is a call or a name: comparisons and their links have operators of their own.
    private static bool IsBareCondition(ExpressionSyntax truth) =>
        truth is InvocationExpressionSyntax or IdentifierNameSyntax or MemberAccessExpressionSyntax or IsPatternExpressionSyntax
        && (truth.Parent is IfStatementSyntax branch && branch.Condition == truth || truth.Parent is ConditionalExpressionSyntax choice
            && choice.Condition == truth);

    private static bool IsNumber(FieldDeclarationSyntax field) =>
        field.Modifiers.Any(SyntaxKind.ConstKeyword) && field.Declaration.Variables.Count == 1
        && field.Declaration.Type.ToString() is "double" or "int"
        && field.Declaration.Variables[0].Initializer is { Value: var value } && !value.DescendantNodesAndSelf().OfType<IdentifierNameSyntax>().Any();

    private static bool IsWhole(ITypeSymbol? type) => type?.SpecialType is SpecialType.System_Int32 or SpecialType.System_Int64 or SpecialType.System_Byte
        or SpecialType.System_UInt32;
}
