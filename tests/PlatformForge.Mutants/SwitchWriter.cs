using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PlatformForge.Mutants;

/// <summary>Writes the chosen mutants of a file into it, each behind the switch. What a mutant becomes holds no other mutant.</summary>
internal sealed class SwitchWriter(IReadOnlyDictionary<SyntaxNode, List<Mutant>> chosen) : CSharpSyntaxRewriter
{
    /// <summary>
    /// The switch, added to the library. A run that only looks which mutants it comes past sets <c>Passed</c>; then the stack of the first who
    /// comes past tells mutants of what is worked out once a process, which a process that has already worked it out would never see.
    /// </summary>
    public const string Source = """
        namespace PlatformForge
        {
            internal static class MutantSwitch
            {
                public static int Active = -1;
                public static bool[]? Passed;
                public static readonly bool[] Ever = new bool[100000];
                public static readonly bool[] Once = new bool[100000];

                public static bool On(int id)
                {
                    if (Passed is { } passed && !passed[id])
                    {
                        passed[id] = true;
                        Note(id);
                    }

                    return id == Active;
                }

                private static void Note(int id)
                {
                    if (!Ever[id])
                    {
                        Ever[id] = true;
                        Once[id] = System.Environment.StackTrace.Contains("..cctor()", System.StringComparison.Ordinal);
                    }
                }
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
