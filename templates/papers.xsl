<?xml version="1.0" encoding="UTF-8"?>
<!-- Where every paper begins. The plan comes in as plan.xml has it, with one child more:
       <print paper="brief|card|parts|design|test|readings|as-laid|quotation|pack" mark="3F2A-11C0" language="en" pack="of-articles"><style>...</style><diagram><svg/></diagram><narrow><svg/></narrow></print>
     pack="of-articles": no template is one of your own. The program then puts the pack together itself, of the papers'
     articles with their headings a step lower; what is the pack's alone, or the paper's by itself, stands between comments
     "pack" or "paper" and "all". Without it the pack is made here, and comments are left out.
     Figures come as finished strings, most of them under <papers> (papers.rng); a template sets them out and does no arithmetic. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform"
    xmlns:svg="http://www.w3.org/2000/svg" exclude-result-prefixes="svg">
  <xsl:include href="house.xsl"/>
  <xsl:include href="brief.xsl"/>
  <xsl:include href="card.xsl"/>
  <xsl:include href="parts.xsl"/>
  <xsl:include href="design.xsl"/>
  <xsl:include href="test.xsl"/>
  <xsl:include href="quotation.xsl"/>
  <xsl:include href="readings.xsl"/>
  <xsl:include href="as-laid.xsl"/>

  <xsl:variable name="paper" select="/plan/print/@paper"/>
  <xsl:variable name="apart" select="/plan/print/@pack = 'of-articles'"/>

  <xsl:template match="/plan">
    <html lang="{/plan/print/@language}">
      <xsl:call-template name="head"/>
      <body class="paper-{$paper}">
        <xsl:choose>
          <xsl:when test="$paper = 'pack'"><xsl:call-template name="pack"/></xsl:when>
          <xsl:otherwise>
            <main>
              <xsl:call-template name="one">
                <xsl:with-param name="which" select="$paper"/>
              </xsl:call-template>
            </main>
          </xsl:otherwise>
        </xsl:choose>
        <!-- the brief has its own before the diagram, whose sheets lie across -->
        <xsl:if test="$paper != 'brief'"><xsl:call-template name="foot"/></xsl:if>
      </body>
    </html>
  </xsl:template>

  <xsl:template name="one">
    <xsl:param name="which"/>
    <article class="paper" id="{$which}">
      <xsl:if test="$which != 'card'">
        <xsl:call-template name="title-block"><xsl:with-param name="which" select="$which"/></xsl:call-template>
      </xsl:if>
      <xsl:choose>
        <xsl:when test="$which = 'brief'"><xsl:apply-templates select="/plan" mode="brief"/></xsl:when>
        <xsl:when test="$which = 'card'"><xsl:apply-templates select="/plan" mode="card"/></xsl:when>
        <xsl:when test="$which = 'parts'"><xsl:apply-templates select="/plan" mode="parts"/></xsl:when>
        <xsl:when test="$which = 'design'"><xsl:apply-templates select="/plan" mode="design"/></xsl:when>
        <xsl:when test="$which = 'quotation'"><xsl:apply-templates select="/plan" mode="quotation"/></xsl:when>
        <xsl:when test="$which = 'test'"><xsl:apply-templates select="/plan" mode="test"/></xsl:when>
        <xsl:when test="$which = 'readings'"><xsl:apply-templates select="/plan" mode="readings"/></xsl:when>
        <xsl:when test="$which = 'as-laid'"><xsl:apply-templates select="/plan" mode="as-laid"/></xsl:when>
      </xsl:choose>
    </article>
  </xsl:template>

  <xsl:template name="packed">
    <xsl:param name="which"/>
    <xsl:choose>
      <xsl:when test="$apart"><article data-paper="{$which}"/></xsl:when>
      <xsl:otherwise><xsl:call-template name="one"><xsl:with-param name="which" select="$which"/></xsl:call-template></xsl:otherwise>
    </xsl:choose>
  </xsl:template>

  <!-- The job pack: a cover with the contents, then each paper on a page of its own; of a built job what was
       measured and laid too, without a second diagram. -->
  <xsl:template name="pack">
    <header class="cover">
      <p class="kind"><xsl:value-of select="key('label', 'job-pack')"/></p>
      <h1><xsl:value-of select="job/@title"/></h1>
      <xsl:call-template name="job-facts"/>
      <xsl:call-template name="verdict"/>
      <xsl:call-template name="stop"/>
      <xsl:call-template name="said"/>
      <nav aria-label="{key('label', 'contents')}">
        <h2><xsl:value-of select="key('label', 'contents')"/></h2>
        <ol class="contents">
          <li><a href="#brief"><xsl:value-of select="key('label', 'crew-brief')"/></a><span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'brief-is-for')"/></span></li>
          <li><a href="#diagram"><xsl:value-of select="key('label', 'run-diagram')"/></a><span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'diagram-is-for')"/></span></li>
          <li><a href="#card"><xsl:value-of select="key('label', 'card')"/></a><span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'card-is-for')"/></span></li>
          <li><a href="#parts"><xsl:value-of select="key('label', 'parts-list')"/></a><span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'parts-are-for')"/></span></li>
          <li><a href="#test"><xsl:value-of select="key('label', 'test-sheet')"/></a><span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'tests-are-for')"/></span></li>
          <xsl:if test="papers/read"><li><a href="#readings"><xsl:value-of select="key('label', 'readings-paper')"/></a><span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'readings-are-for')"/></span></li></xsl:if>
          <xsl:if test="papers/as-laid"><li><a href="#as-laid"><xsl:value-of select="key('label', 'as-laid-sheet')"/></a><span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'as-laid-is-for')"/></span></li></xsl:if>
          <li><a href="#design"><xsl:value-of select="key('label', 'design-sheet')"/></a><span><xsl:text> </xsl:text><xsl:value-of select="key('label', 'design-is-for')"/></span></li>
        </ol>
      </nav>
    </header>
    <main>
      <xsl:call-template name="packed"><xsl:with-param name="which" select="'brief'"/></xsl:call-template>
      <xsl:call-template name="packed"><xsl:with-param name="which" select="'card'"/></xsl:call-template>
      <xsl:call-template name="packed"><xsl:with-param name="which" select="'parts'"/></xsl:call-template>
      <xsl:call-template name="packed"><xsl:with-param name="which" select="'test'"/></xsl:call-template>
      <xsl:if test="papers/read"><xsl:call-template name="packed"><xsl:with-param name="which" select="'readings'"/></xsl:call-template></xsl:if>
      <xsl:if test="papers/as-laid"><xsl:call-template name="packed"><xsl:with-param name="which" select="'as-laid'"/></xsl:call-template></xsl:if>
      <xsl:call-template name="packed"><xsl:with-param name="which" select="'design'"/></xsl:call-template>
    </main>
  </xsl:template>
</xsl:stylesheet>
