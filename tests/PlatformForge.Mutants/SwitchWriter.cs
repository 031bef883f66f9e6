using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PlatformForge.Mutants;

/// <summary>Writes the chosen mutants of a file into it, each behind the switch. What a mutant becomes holds no other mutant.</summary>
internal sealed class SwitchWriter(IReadOnlyDictionary<SyntaxNode, List<Mutant>> chosen) : CSharpSyntaxRewriter
{
    /// <summary>The switch, added to the library: told the mutant by the environment, it can also note which mutants a run comes past.</summary>
    public const string Source = """
        namespace PlatformForge
        {
            internal static class MutantSwitch
            {
                private static readonly int Active = int.Parse(System.Environment.GetEnvironmentVariable("PLATFORMFORGE_MUTANT") ?? "-1", System.Globalization.CultureInfo.InvariantCulture);
                private static readonly bool[]? Passed = Active == -2 ? new bool[100000] : null;

                public static bool On(int id)
                {
                    if (Passed is not null)
                    {
                        Passed[id] = true;
                    }

                    return id == Active;
                }

                public static System.Collections.Generic.IEnumerable<int> Reached() =>
                    Passed is null ? [] : System.Linq.Enumerable.Where(System.Linq.Enumerable.Range(0, Passed.Length), i => Passed[i]);
            }
        }
        """;

    public override SyntaxNode? Visit(SyntaxNode? node)
    {
        var written = base.Visit(node);
        if (node is null || written is null || !chosen.TryGetValue(node, out var mutants))
        {
            return written;
        }

        foreach (var mutant in mutants)
        {
            written = Behind(mutant, written);
        }

        return written;
    }

    private static SyntaxNode Behind(Mutant mutant, SyntaxNode written)
    {
        string on = $"global::PlatformForge.MutantSwitch.On({mutant.Id})";
        return mutant.Shape switch
        {
            Shape.Either => SyntaxFactory.ParseExpression($" ({on} ? ({mutant.Becomes}) : ({written})) "),
            Shape.Negated => SyntaxFactory.ParseExpression($" ({on} != ({written})) "),
            Shape.Statement => SyntaxFactory.ParseStatement($" if ({on}) {{ {mutant.Becomes} }} else {{ {written} }} "),
            _ => AsProperty(mutant, (FieldDeclarationSyntax)written, on),
        };
    }

    private static MemberDeclarationSyntax AsProperty(Mutant mutant, FieldDeclarationSyntax field, string on)
    {
        var variable = field.Declaration.Variables[0];
        string modifiers = string.Join(' ', field.Modifiers.Where(m => !m.IsKind(SyntaxKind.ConstKeyword)).Select(m => m.Text));
        return SyntaxFactory.ParseMemberDeclaration(
            $" {modifiers} static {field.Declaration.Type} {variable.Identifier} => {on} ? ({mutant.Becomes}) : ({variable.Initializer!.Value}); ")!;
    }
}
