using System.Security.Cryptography;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PlatformForge.Mutants;

/// <summary>Every mutant that the operators make of a room, in an order by lot: the first so many are a fair sample of any size.</summary>
internal static class SourceSites
{
    public static List<Mutant> Of(string room, CSharpCompilation compilation, string library, int seed)
    {
        var all = new List<Mutant>();
        foreach (var tree in compilation.SyntaxTrees)
        {
            string file = Path.GetRelativePath(library, tree.FilePath).Replace('\\', '/');
            if (!file.StartsWith(room + "/", StringComparison.Ordinal))
            {
                continue;
            }

            var model = compilation.GetSemanticModel(tree);
            foreach (var node in tree.GetRoot().DescendantNodes().Where(MayChange))
            {
                foreach (var (name, becomes, shape) in Operators.At(node, model))
                {
                    int line = node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;
                    all.Add(new(room, file, line, Member(node), name, OneLine(node.ToString()), OneLine(becomes), shape, node));
                }
            }
        }

        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        return [.. all.Select(m => m with { Key = KeyOf(m, seen) }).OrderBy(m => Lot(seed, m.Key), StringComparer.Ordinal)];
    }

    private static string KeyOf(Mutant mutant, Dictionary<string, int> seen)
    {
        string text = $"{mutant.File}|{mutant.Member}|{mutant.Operator}|{mutant.Was}|{mutant.Becomes}";
        int before = seen.GetValueOrDefault(text);
        seen[text] = before + 1;
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{text}|{before}")))[..10];
    }

    private static string Lot(int seed, string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{seed}|{key}")));

    private static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string Member(SyntaxNode node) => node.Ancestors().Prepend(node).OfType<MemberDeclarationSyntax>().FirstOrDefault() switch
    {
        MethodDeclarationSyntax m => m.Identifier.Text,
        PropertyDeclarationSyntax p => p.Identifier.Text,
        ConstructorDeclarationSyntax c => c.Identifier.Text,
        FieldDeclarationSyntax f => f.Declaration.Variables[0].Identifier.Text,
        BaseTypeDeclarationSyntax t => t.Identifier.Text,
        OperatorDeclarationSyntax o => "operator " + o.OperatorToken.Text,
        _ => "",
    };

    // What must be known to the compiler, what names variables for later, and what is inside a pattern cannot be put behind a switch.
    private static bool MayChange(SyntaxNode node) =>
        !node.Ancestors().TakeWhile(a => a is not (StatementSyntax or MemberDeclarationSyntax))
        .Any(a => a is PatternSyntax or AttributeSyntax or CaseSwitchLabelSyntax)
        && !node.Ancestors().Any(a => a is AttributeSyntax or EnumMemberDeclarationSyntax || a is ParameterSyntax
            || (a is FieldDeclarationSyntax f && f.Modifiers.Any(SyntaxKind.ConstKeyword))
            || (a is LocalDeclarationStatementSyntax l && l.IsConst));
}
