using System.Text.RegularExpressions;
using FsCheck.Xunit;
using Mono.Cecil;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>Every test makes a claim that can turn out false.</summary>
public partial class ClaimTests
{
    private static readonly ModuleDefinition Tests = ModuleDefinition.ReadModule(typeof(ClaimTests).Assembly.Location);

    /// <summary>From the body of each test some way leads to an assertion, or it answers true or false.</summary>
    [Fact]
    public void Every_test_comes_to_an_assertion()
    {
        var silent = Tests.GetTypes().SelectMany(t => t.Methods).Where(IsTest).Where(m => !Claims(m)).Select(m => $"{m.DeclaringType.Name}.{m.Name}");
        Assert.Empty(silent);
    }

    /// <summary>The scanner sees what it is for: a method that only calls, and one that asserts two calls away.</summary>
    [Fact]
    public void A_body_without_a_claim_is_seen()
    {
        var here = Tests.GetType(typeof(ClaimTests).FullName);
        Assert.False(Claims(here.Methods.Single(m => m.Name == nameof(OnlyCalls))));
        Assert.True(Claims(here.Methods.Single(m => m.Name == nameof(AssertsFarAway))));
    }

    /// <summary>Claims that are true whatever the program does, as far as their text shows it.</summary>
    [Fact]
    public void No_claim_is_true_by_its_form()
    {
        string folder = Path.Combine(SourceTree.Root, "tests", "PlatformForge.Tests");
        var hollow = Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains("/obj/",
            StringComparison.Ordinal) && Path.GetFileName(f) != "ClaimTests.cs")
            .SelectMany(f => File.ReadLines(f).Where(IsHollow).Select(l => $"{Path.GetFileName(f)}: {l.Trim()}"));
        Assert.Empty(hollow);
    }

    /// <summary>What the one before takes for hollow.</summary>
    [Theory]
    [InlineData("Assert.True(true);", true)]
    [InlineData("Assert.Equal(plan.Width, plan.Width);", true)]
    [InlineData("Assert.Equal(plan.Width, plan.Width, 1e-9);", true)]
    [InlineData("Assert.True(found.Count >= 0);", true)]
    [InlineData("Assert.InRange(found.Length, 0, int.MaxValue);", true)]
    [InlineData("Assert.Equal(plan.Width, other.Width);", false)]
    [InlineData("Assert.True(found.Count >= 1);", false)]
    public void Hollow_claims_are_known(string line, bool hollow) => Assert.Equal(hollow, IsHollow(line));

    private static bool IsHollow(string line) => Hollow().IsMatch(line);

    [GeneratedRegex(@"Assert\.(?:True\(true|False\(false)\b|Assert\.(?:Equal|Same|Equivalent)\(([^,()""]+), \1[,)]"
        + @"|(?:Count|Length|Count\(\)) >= 0\b|Assert\.InRange\([^;]*\.(?:Count|Length), 0, int\.MaxValue\)")]
    private static partial Regex Hollow();

    private static bool IsTest(MethodDefinition method) => method.CustomAttributes.Any(a => Attributes(a.AttributeType).Contains("FactAttribute"));

    private static IEnumerable<string> Attributes(TypeReference type)
    {
        for (var t = type; t is not null; t = t.Resolve()?.BaseType)
        {
            yield return t.Name;
        }
    }

    private static bool Claims(MethodDefinition test)
    {
        if (test.CustomAttributes.Any(a => a.AttributeType.Name == nameof(PropertyAttribute)) && test.ReturnType.FullName != "System.Void")
        {
            return true;
        }

        var open = new Queue<MethodDefinition>([test]);
        var seen = new HashSet<MethodDefinition> { test };
        while (open.TryDequeue(out var method))
        {
            foreach (var called in Called(method))
            {
                if (IsAssertion(called))
                {
                    return true;
                }

                if (called.DeclaringType.Scope == Tests && called.Resolve() is { HasBody: true } own && seen.Add(own))
                {
                    open.Enqueue(own);
                }
            }
        }

        return false;
    }

    // What it calls, hands on as a delegate, or makes and steps through (iterators, tasks).
    private static IEnumerable<MethodReference> Called(MethodDefinition method)
    {
        foreach (var operand in method.Body.Instructions.Select(i => i.Operand).OfType<MethodReference>())
        {
            yield return operand;
            if (operand.Name == ".ctor" && operand.DeclaringType.Name.StartsWith('<') && operand.DeclaringType.Resolve() is { } made)
            {
                foreach (var step in made.Methods.Where(m => m.Name == "MoveNext"))
                {
                    yield return step;
                }
            }
        }

        foreach (var machine in method.CustomAttributes.Where(a => a.AttributeType.Name.EndsWith("StateMachineAttribute", StringComparison.Ordinal)))
        {
            yield return ((TypeReference)machine.ConstructorArguments[0].Value).Resolve().Methods.Single(m => m.Name == "MoveNext");
        }
    }

    private static bool IsAssertion(MethodReference called) => called.DeclaringType.FullName is "Xunit.Assert" or "PlatformForge.Tests.Assert"
        || called.DeclaringType.FullName.StartsWith("ArchUnitNET.xUnit.", StringComparison.Ordinal);

    private static int OnlyCalls() => Math.Max(Environment.ProcessorCount, 1);

    private static void AssertsFarAway() => new[] { 1, 2 }.ToList().ForEach(n => Near(n));

    private static void Near(int number) => Assert.InRange(number, 1, 2);
}
